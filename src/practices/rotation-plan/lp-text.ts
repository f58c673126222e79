/**
 * A model as text in the LP format that CPLEX made common: one objective, rows, bounds, and which columns are whole.
 */
import type { Model, Row, Term } from './model.ts';

/** Terms on a line: readers of the format stop at long lines. */
const TERMS_ON_LINE = 8;

/** The model's text. Columns are called v0, v1 … in order. */
export function lpText({ columns, rows }: Model): string {
  const costs = columns.map(({ cost }, column) => ({ column, times: cost })).filter(({ times }) => times !== 0);
  const whole = columns.flatMap((column, at) => (column.whole ? [columnName(at)] : []));
  return [
    'Minimize',
    ` cost: ${sum(costs.length > 0 ? costs : [{ column: 0, times: 0 }])}`,
    'Subject To',
    ...rows.flatMap(rowLines),
    'Bounds',
    ...columns.map(({ lower, upper }, at) => ` ${figure(lower)} <= ${columnName(at)} <= ${figure(upper)}`),
    ...(whole.length > 0 ? ['General', ...whole.map((name) => ` ${name}`)] : []),
    'End',
    '',
  ].join('\n');
}

/** What a column is called in the text. */
export function columnName(column: number): string {
  return `v${column}`;
}

function rowLines({ terms, least, most }: Row, at: number): string[] {
  const left = sum(terms);
  return [
    ...(most === undefined ? [] : [` most${at}: ${left} <= ${figure(most)}`]),
    ...(least === undefined ? [] : [` least${at}: ${left} >= ${figure(least)}`]),
  ];
}

function sum(terms: readonly Term[]): string {
  const words = terms.map(
    ({ column, times }) => `${times < 0 ? '-' : '+'} ${figure(Math.abs(times))} ${columnName(column)}`,
  );
  const lines = words.flatMap((word, at) => (at > 0 && at % TERMS_ON_LINE === 0 ? ['\n  ', word] : [word]));
  return lines.join(' ');
}

/** Plain figures: not every reader takes an exponent. */
function figure(value: number): string {
  return Number.isInteger(value) ? String(value) : value.toFixed(DECIMALS);
}

const DECIMALS = 8;
