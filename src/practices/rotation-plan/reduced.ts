/**
 * A model with some of its columns held: what is left of it to be found.
 */
import type { Column, Model, Row, Term } from './model.ts';

/** A smaller model and which column of the whole each of its columns is. */
export interface Reduced {
  model: Model;
  columns: readonly number[];
}

/**
 * The model with columns held at values. Rows in which nothing is left to decide are left out, and with them the costs
 * that follow from what is held: the least of the rest is the least of the whole.
 */
export function reduced(whole: Model, held: ReadonlyMap<number, number>): Reduced {
  const decides = ({ column }: Term) => !held.has(column) && whole.columns[column]?.follows !== true;
  const rows = whole.rows.filter(({ terms }) => terms.some(decides));
  const columns = [...new Set(rows.flatMap(({ terms }) => terms.map(({ column }) => column)))]
    .filter((column) => !held.has(column))
    .sort((a, b) => a - b);
  const places = new Map(columns.map((column, at) => [column, at]));
  return {
    model: {
      columns: columns.flatMap((column): readonly Column[] => {
        const held = whole.columns[column];
        return held === undefined ? [] : [held];
      }),
      rows: rows.map((row) => without(row, held, places)),
    },
    columns,
  };
}

function without(
  { terms, least, most, ...rest }: Row,
  held: ReadonlyMap<number, number>,
  places: ReadonlyMap<number, number>,
): Row {
  const sum = terms.reduce((total, { column, times }) => total + times * (held.get(column) ?? 0), 0);
  return {
    ...rest,
    terms: terms.flatMap(({ column, times }): Term[] => {
      const at = places.get(column);
      return at === undefined ? [] : [{ column: at, times }];
    }),
    ...(least === undefined ? {} : { least: least - sum }),
    ...(most === undefined ? {} : { most: most - sum }),
  };
}
