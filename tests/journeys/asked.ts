/**
 * What a page shows of a kind, such as dates or amounts, each with whether it can be asked where it comes from: whether it
 * is in or beside a link to the reasons of its task, to what was told, or to the rule or the climate it comes from.
 */
import { DomUtils, parseDocument } from 'htmlparser2';

type Node = ReturnType<typeof parseDocument>['children'][number];
type Element = Extract<Node, { attribs: unknown }>;

/** How it can be asked: it is a link, one stands beside it, it stands among reasons; or not at all. */
export type Asked = 'link' | 'beside' | 'reasons' | 'no';

/** A date or an amount as it is shown. */
export interface Shown {
  text: string;
  asked: Asked;
  /** The words it stands among. */
  words: string;
  /** Names and classes of what it stands in, innermost first. */
  within: readonly string[];
}

/** Where it is asked: at a task, at a rule or a source, at what was told, at the climate, in the weather log. */
const WAY =
  /\/tasks\/|#why$|^\/handbook\/[a-z-]+#|\/edit\/|\/history|\/undo|#told$|#wanted$|\/climate|\/garden#|\/garden-file|\/weather(?:\/day|$)|\/member\/change/;

/** What is read as one: a link anywhere in it stands beside all of it. */
const ROWS: ReadonlySet<string> = new Set(['li', 'tr', 'dd', 'p', 'figcaption', 'caption', 'details', 'legend']);

/** Drawn, or typed by the reader. */
const UNREAD: ReadonlySet<string> = new Set(['svg', 'textarea', 'input', 'option', 'select', 'style', 'button']);

/**
 * Everything of a kind in the main part of a page.
 *
 * @param kind finds it in words; global
 */
export function shownOn(html: string, kind: RegExp): Shown[] {
  const [main] = DomUtils.getElementsByTagName('main', parseDocument(html));
  return main === undefined ? [] : shownIn(main, { kind, around: [] });
}

function shownIn(node: Node, { kind, around }: { kind: RegExp; around: readonly Element[] }): Shown[] {
  if (node.type === 'text') {
    return [...node.data.matchAll(kind)].map(([text]) => ({
      text,
      asked: askedIn(around),
      words: DomUtils.textContent(around[0] ?? node)
        .replace(/\s+/g, ' ')
        .trim(),
      within: around.map(({ name, attribs }) => [name, ...(attribs.class ?? '').split(' ')].filter(Boolean).join('.')),
    }));
  }
  if (!('attribs' in node) || UNREAD.has(node.name)) return [];
  return node.children.flatMap((child) => shownIn(child, { kind, around: [node, ...around] }));
}

function askedIn(around: readonly Element[]): Asked {
  const link = around.find(({ name }) => name === 'a');
  if (link !== undefined && WAY.test(link.attribs.href ?? '')) return 'link';
  if (around.some(({ attribs }) => attribs.id === 'why' || attribs.class === 'reasons')) return 'reasons';
  const isBeside = around.some((each) => (ROWS.has(each.name) && leadsOn(each)) || each.children.some(isWhence));
  return isBeside ? 'beside' : 'no';
}

function leadsOn(row: Element): boolean {
  return DomUtils.getElementsByTagName('a', row).some(({ attribs: { href = '' } }) => WAY.test(href));
}

/** A line that tells where all that stands around it comes from. */
function isWhence(node: Node): boolean {
  return 'attribs' in node && (node.attribs.class ?? '').split(' ').includes('whence') && leadsOn(node);
}
