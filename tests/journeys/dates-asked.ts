/**
 * The dates a page shows, each with whether it can be asked why: whether it is in or beside a link to the reasons of its
 * task, to what was told, or to the rule or the climate it comes from.
 */
import { DomUtils, parseDocument } from 'htmlparser2';
import { MONTHS } from '../../src/measures/quantity.ts';

type Node = ReturnType<typeof parseDocument>['children'][number];
type Element = Extract<Node, { attribs: unknown }>;

/** How a date can be asked: it is a link, one stands beside it, it stands among reasons; or not at all. */
export type Asked = 'link' | 'beside' | 'reasons' | 'no';

/** A date as it is shown. */
export interface ShownDate {
  date: string;
  asked: Asked;
  /** The words it stands among. */
  words: string;
  /** Names and classes of what it stands in, innermost first. */
  within: readonly string[];
}

/** A date in words, in either order. */
const MONTH = `(?:${MONTHS.join('|')})`;
const DATE = new RegExp(`${MONTH} \\d{1,2}(?!\\d)(?:, \\d{4})?|\\d{1,2} ${MONTH}(?: \\d{4})?`, 'g');

/** Where a date is asked why: at a task, at a rule or a source, at what was told, at the climate, in the weather log. */
const WAY =
  /\/tasks\/|#why$|^\/handbook\/[a-z-]+#|\/edit\/|\/history|\/undo|#told$|#wanted$|\/climate|\/garden#|\/garden-file|\/weather(?:\/day|$)|\/member\/change/;

/** What is read as one: a link anywhere in it stands beside its dates. */
const ROWS: ReadonlySet<string> = new Set(['li', 'tr', 'dd', 'p', 'figcaption', 'caption', 'details', 'legend']);

/** Drawn, or typed by the reader. */
const UNREAD: ReadonlySet<string> = new Set(['svg', 'textarea', 'input', 'option', 'select', 'style', 'button']);

/** Every date in the main part of a page. */
export function datesOn(html: string): ShownDate[] {
  const [main] = DomUtils.getElementsByTagName('main', parseDocument(html));
  return main === undefined ? [] : datesIn(main, []);
}

function datesIn(node: Node, around: readonly Element[]): ShownDate[] {
  if (node.type === 'text') {
    return [...node.data.matchAll(DATE)].map(([date]) => ({
      date,
      asked: askedIn(around),
      words: DomUtils.textContent(around[0] ?? node)
        .replace(/\s+/g, ' ')
        .trim(),
      within: around.map(({ name, attribs }) => [name, ...(attribs.class ?? '').split(' ')].filter(Boolean).join('.')),
    }));
  }
  if (!('attribs' in node) || UNREAD.has(node.name)) return [];
  return node.children.flatMap((child) => datesIn(child, [node, ...around]));
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

/** A line that tells where all dates around it come from. */
function isWhence(node: Node): boolean {
  return 'attribs' in node && (node.attribs.class ?? '').split(' ').includes('whence') && leadsOn(node);
}
