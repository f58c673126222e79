/**
 * A page of the docs as HTML: with a name on every heading and rule, and links that lead somewhere in the web view.
 */
import { Marked, type Tokens } from 'marked';
import type { UnitSystem } from '../../../measures/units.ts';
import { handbookImagePath, handbookPath, sourcePath } from '../../addresses/addresses.ts';
import { bothUnits } from './both-units.ts';

/** What a page may lead to. */
export interface Surroundings {
  /** Names of the pages, without `.md`. */
  pages: ReadonlySet<string>;
  /** Names of the drawings and pictures in the folder `images`. */
  images: ReadonlySet<string>;
  /** Books by their id, as the bibliography has them. */
  citations: ReadonlyMap<string, string>;
  /** Whether figures are told in the units of either reader. */
  inBothUnits: boolean;
}

/** A page of the docs, ready to be shown. */
export interface DocsPage {
  name: string;
  title: string;
  /** Its first sentences without any mark, for a list of contents. */
  about: string;
  /** The rules that have a row of their own on it. */
  rules: readonly string[];
  html: string;
}

/** Writes one page. The text is the program's own and trusted. */
export function docsPage(name: string, text: string, around: Surroundings): DocsPage {
  const marked = new Marked({ gfm: true });
  const taken = new Set<string>();
  let title = name;
  marked.use({
    renderer: {
      heading({ tokens, depth, text: words }: Tokens.Heading) {
        if (depth === 1) title = words;
        const anchor = ownAnchor(anchorOf(words), taken);
        return `<h${depth} id="${anchor}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
      },
      codespan({ text: code }: Tokens.Codespan) {
        const citation = around.citations.get(code);
        if (citation === undefined) return `<code>${escaped(code)}</code>`;
        const words = escaped(shortCitation(citation));
        return `<a class="cited" href="${escaped(sourcePath(code))}" title="${escaped(citation)}">${words}</a>`;
      },
      link({ href, tokens }: Tokens.Link) {
        const words = this.parser.parseInline(tokens);
        const path = pathOf(href, around);
        return path === undefined ? words : `<a href="${escaped(path)}">${words}</a>`;
      },
      table({ header, rows }: Tokens.Table) {
        const written = (cell: Tokens.TableCell): string => this.parser.parseInline(cell.tokens);
        const shown = (_: unknown, column: number) => !FOR_PROGRAMS.has(header[column]?.text ?? '');
        const heads = header
          .filter(shown)
          .map((cell) => headOf(written(cell)))
          .join('');
        const body = rows.map((row) => rowOf(row.filter(shown), header.filter(shown), ruleIn(row), written)).join('\n');
        return `<table>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${body}\n</tbody></table>\n`;
      },
      text(token: Tokens.Text | Tokens.Escape) {
        if ('tokens' in token && token.tokens !== undefined) return this.parser.parseInline(token.tokens);
        const words = escaped(token.text);
        return around.inBothUnits ? bothUnits(words, inBrackets) : words;
      },
      image({ href, text: words }: Tokens.Image) {
        const file = href.replace(/^images\//, '');
        return around.images.has(file) ? `<img src="${handbookImagePath(file)}" alt="${escaped(words)}">` : words;
      },
    },
  });
  const html = folded(marked.parse(text, { async: false }));
  const rules = [...html.matchAll(/<tr id="([^"]+)">/g)].flatMap(([, rule]) => rule ?? []);
  return { name, title, about: opening(text), rules, html };
}

/** The other units of a figure: those that come from metric ones can be left out for whoever reads these. */
function inBrackets(words: string, units: UnitSystem): string {
  return `<span class="other-units${units === 'us' ? ' in-us' : ''}">${words}</span>`;
}

/** The heading of what only a contributor, or whoever uses the command line, looks for. */
const APART = '<h2 id="for-contributors">';

/** A page with its part for contributors folded away at its end. */
function folded(html: string): string {
  const [before = '', apart] = html.split(APART);
  if (apart === undefined) return html;
  const [heading = '', rest = ''] = apart.split(/<\/h2>(.*)/s);
  return (
    `${before}<details class="for-contributors"><summary><h2 id="for-contributors">${heading}</h2></summary>` +
    `${rest}</details>`
  );
}

/** A source as a reader is told of it: who says it. The whole stands in the bibliography. */
function shortCitation(citation: string): string {
  const [who = citation] = citation.split(/[,:(]/);
  return who.trim();
}

/** The name of a rule, alone in its cell. */
const RULE = /^`([a-z-]+\.[a-z-]+)`$/;

/**
 * A row with the heads of its columns kept beside each cell, for a narrow screen that sets one below the other. A rule is
 * what a reason on a task's page goes by: each has an anchor of its own, and its name, which only programs go by, is not
 * shown.
 */
function rowOf(
  row: Tokens.TableCell[],
  header: Tokens.TableCell[],
  rule: string | undefined,
  written: (cell: Tokens.TableCell) => string,
): string {
  const cells = row.map((cell, at) => {
    const of = at === 0 ? '' : ` data-of="${escaped(header[at]?.text ?? '')}"`;
    return `<td${of}>${written(cell)}</td>`;
  });
  return `<tr${rule === undefined ? '' : ` id="${rule}"`}>${cells.join('')}</tr>`;
}

function ruleIn([cell]: Tokens.TableCell[]): string | undefined {
  return RULE.exec(cell?.text ?? '')?.[1];
}

/** Heads of columns that only programs go by: the names of rules, and the keys of tasks. */
const FOR_PROGRAMS: ReadonlySet<string> = new Set(['rule', 'key']);

/** The head of a column; one that says nothing is no head. */
function headOf(words: string): string {
  return words === '' ? '<td></td>' : `<th scope="col">${words}</th>`;
}

/** The anchor of a heading, made as code hosts make theirs, so that links in the docs hold in both places. */
function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .trim()
    .replace(/\s/g, '-');
}

/** A second heading of the same words is numbered. */
function ownAnchor(anchor: string, taken: Set<string>): string {
  let own = anchor;
  for (let count = 1; taken.has(own); count += 1) own = `${anchor}-${count}`;
  taken.add(own);
  return own;
}

/** Where a link leads in the web view; nothing where its page is not served. */
function pathOf(href: string, { pages }: Surroundings): string | undefined {
  if (/^https?:/.test(href) || href.startsWith('#')) return href;
  const [, page = '', anchor] = /^([a-z-]+)\.md(?:#(.+))?$/.exec(href) ?? [];
  return pages.has(page) ? handbookPath(page, anchor) : undefined;
}

/** The first paragraph under the title, as plain words; two sentences of it at most. */
function opening(text: string): string {
  const [, paragraph = ''] = /^# .+\n+((?:.+\n)+)/.exec(text) ?? [];
  const plain = paragraph.replace(/\[([^\]]+)\]\([^)]*\)/g, '$1').replace(/[`*]/g, '');
  const sentences = plain
    .replace(/\s+/g, ' ')
    .trim()
    .split(/(?<=[.!?]) (?=[A-Z])/);
  return sentences.slice(0, 2).join(' ');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
