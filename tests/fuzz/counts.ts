/**
 * What a run came to, written into docs/bad-input.md; and what of it is known without one.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { ODD_TEXTS } from './odd-values.ts';
import { EDGES } from './places.ts';
import { REFUSED as REFUSED_GARDENS } from './refused-garden-files.ts';
import { REFUSED as REFUSED_RECORDS } from './refused-weather-files.ts';

const PAGE = new URL('../../docs/bad-input.md', import.meta.url);
const [FROM, TO] = ['<!-- counts -->', '<!-- end of counts -->'];

/** What is sent in every run, whatever its seed. */
export function sentAlways(routes: number): { routes: string; saved: string[][] } {
  const gardens = Object.keys(REFUSED_GARDENS).length;
  const files = gardens + Object.keys(REFUSED_RECORDS).length;
  return {
    routes: `${routes} routes`,
    saved: [
      ['saved odd values', String(ODD_TEXTS.length)],
      ['saved files that are refused', `${files}: ${gardens} of gardens, the others of weather`],
      ['saved places and records', String(Object.keys(EDGES).length)],
    ],
  };
}

/** The rows of the table as it stands on the page. */
export function countsWritten(): string[][] {
  const page = readFileSync(PAGE, 'utf8');
  const lines = page.slice(page.indexOf(FROM), page.indexOf(TO)).split('\n');
  return lines.filter((line) => line.startsWith('| ')).map((line) => line.slice(2, -2).split(' | '));
}

/** Puts a table of two columns in place of the one there was. */
export function writeCounts(rows: readonly (readonly string[])[]): void {
  const page = readFileSync(PAGE, 'utf8');
  const [before, after] = [page.slice(0, page.indexOf(FROM)), page.slice(page.indexOf(TO))];
  const table = [['what was sent', 'what came of it'], ['---', '---'], ...rows].map((row) => `| ${row.join(' | ')} |`);
  writeFileSync(PAGE, `${before}${FROM}\n\n${table.join('\n')}\n\n${after}`);
}
