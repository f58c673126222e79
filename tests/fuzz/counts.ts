/**
 * What a run came to, written into docs/bad-input.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';

const PAGE = new URL('../../docs/bad-input.md', import.meta.url);
const [FROM, TO] = ['<!-- counts -->', '<!-- end of counts -->'];

/** Puts a table of two columns in place of the one there was. */
export function writeCounts(rows: readonly (readonly string[])[]): void {
  const page = readFileSync(PAGE, 'utf8');
  const [before, after] = [page.slice(0, page.indexOf(FROM)), page.slice(page.indexOf(TO))];
  const table = [['what was sent', 'what came of it'], ['---', '---'], ...rows].map((row) => `| ${row.join(' | ')} |`);
  writeFileSync(PAGE, `${before}${FROM}\n\n${table.join('\n')}\n\n${after}`);
}
