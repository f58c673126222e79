/**
 * What leans on a book: the rules the handbook writes it beside, and the rows of the tables that were written from it.
 */
import { coverCrops } from '../../handbook/cover-crops.ts';
import { coverMixes } from '../../handbook/cover-mixes.ts';
import { diseases } from '../../handbook/diseases.ts';
import { feedstocks } from '../../handbook/feedstocks.ts';
import { fertilisers } from '../../handbook/fertilisers.ts';
import type { SourceId } from '../../handbook/shapes/row.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import type { Docs } from './docs/docs.ts';

/** A rule with the page it is written on. */
export interface LeaningRule {
  rule: string;
  page: string;
}

/** What leans on one book. */
export interface Leaning {
  rules: readonly LeaningRule[];
  /** Rows of the tables, by the table's word: "vegetables". */
  rows: readonly { table: string; names: readonly string[] }[];
  /** Titles of further pages that name it, with the page. */
  pages: readonly string[];
}

const TABLES: readonly { table: string; rows: readonly { name: string; sources: readonly SourceId[] }[] }[] = [
  { table: 'vegetables', rows: vegetables },
  { table: 'cover crops', rows: coverCrops },
  { table: 'mixes', rows: coverMixes },
  { table: 'what goes on the pile', rows: feedstocks },
  { table: 'diseases', rows: diseases },
  { table: 'fertilisers', rows: fertilisers.map(({ name, source }) => ({ name, sources: bookOf(source) })) },
];

function bookOf(source: string): SourceId[] {
  return source.includes(':') ? [source as SourceId] : [];
}

/** What leans on a book, as far as it is written down in the docs and the tables. */
export function leaningOn(id: SourceId, { pages }: Docs): Leaning {
  const link = `href="/handbook/sources#${id}"`;
  const naming = [...pages.values()].filter(({ html }) => html.includes(link));
  const rules = naming.flatMap(({ name, html }) =>
    [...html.matchAll(/<tr id="([^"]+)">(.*)<\/tr>/g)].flatMap(([, rule, row]) =>
      rule !== undefined && row?.includes(link) ? [{ rule, page: name }] : [],
    ),
  );
  return {
    rules,
    rows: TABLES.map(({ table, rows }) => ({
      table,
      names: rows.filter(({ sources }) => sources.includes(id)).map(({ name }) => name),
    })).filter(({ names }) => names.length > 0),
    pages: naming.map(({ name }) => name).filter((name) => !rules.some(({ page }) => page === name)),
  };
}
