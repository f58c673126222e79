/**
 * What the bench of growth has measured, told as it goes, and kept for the page that shows it.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';

/** Minutes after which nothing more is begun. */
const END_MIN = 6;
const BEGINS = '<!-- measured -->\n';
const ENDS = '<!-- end of measured -->';
const PAGE = new URL('../../docs/growth.md', import.meta.url);

/** Lines of Markdown, printed at once. */
export class Told {
  readonly #lines: string[] = [];

  say(...lines: string[]): void {
    for (const line of lines) console.log(line);
    this.#lines.push(...lines);
  }

  /** The head of a table. */
  table(...columns: string[]): void {
    this.say('', row(columns), row(columns.map(() => '---')));
  }

  row(...cells: (string | number)[]): void {
    this.say(row(cells));
  }

  /** Whether there is time for more. */
  get isTimeLeft(): boolean {
    return performance.now() < END_MIN * 60_000;
  }

  /** Puts all that was told between the marks of its page. */
  write(): void {
    const page = readFileSync(PAGE, 'utf8');
    const [begin, end] = [page.indexOf(BEGINS), page.indexOf(ENDS)];
    if (begin < 0 || end < begin) throw new Error(`docs/growth.md has lost its marks ${BEGINS.trim()} and ${ENDS}.`);
    writeFileSync(PAGE, `${page.slice(0, begin + BEGINS.length)}\n${this.#lines.join('\n')}\n\n${page.slice(end)}`);
  }
}

/** What is told of a row there was no time for. */
export const NOT_BEGUN = `not begun within ${END_MIN} minutes`;

function row(cells: readonly (string | number)[]): string {
  return `| ${cells.join(' | ')} |`;
}
