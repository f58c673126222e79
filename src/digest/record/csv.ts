/**
 * The lines of a record as comma-separated values after RFC 4180: a header, a line each, CRLF at every end.
 *
 * Numbers are SI with a point and carry their unit in the name of their column; days are ISO. A text that a spreadsheet could
 * take for a formula is written with an apostrophe before it, after OWASP's advice on CSV injection.
 */
import { plainText } from './plain-text.ts';
import type { RecordRow } from './row.ts';

/** The columns, in order: each is a key of a line, its unit written out. */
export const CSV_COLUMNS = {
  season: 'season',
  on: 'day',
  to: 'last_day',
  about: 'about',
  aboutId: 'about_id',
  aboutName: 'about_name',
  doing: 'doing',
  what: 'what',
  itemId: 'item_id',
  litres: 'litres',
  grams: 'grams',
  areaM2: 'area_m2',
  tempC: 'temp_c',
  minutes: 'minutes',
  piles: 'piles',
  plannedFor: 'planned_for',
  lastDay: 'last_day_that_would_do',
  title: 'title',
  note: 'note',
  practice: 'practice',
  task: 'task',
  by: 'told_by',
  toldOn: 'told_on',
  entry: 'entry',
  origin: 'origin',
} as const satisfies Readonly<Record<keyof RecordRow, string>>;

const KEYS = Object.keys(CSV_COLUMNS) as (keyof RecordRow)[];

/** Lines as CSV. Marked amounts and days in texts are written out, SI and ISO. */
export function recordCsv(rows: readonly RecordRow[]): string {
  const lines = [Object.values(CSV_COLUMNS), ...rows.map((row) => KEYS.map((key) => cell(row[key])))];
  return lines.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function cell(value: string | number | undefined): string {
  if (value === undefined) return '';
  return typeof value === 'number' ? String(value) : harmless(plainText(value));
}

/**
 * What makes a spreadsheet read a cell as a formula when it comes first (OWASP, CSV Injection): = + - @, tab, line breaks,
 * and the wide forms of the four signs. Apostrophes before it count in, so that taking one off always gives the text back.
 */
const FORMULA_LIKE = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** A text no spreadsheet works out. */
export function harmless(text: string): string {
  return FORMULA_LIKE.test(text) ? `'${text}` : text;
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
