/**
 * A weather record written in the shared form, so that it can be kept, looked at and read again.
 */
import type { DailyWeather } from './weather.ts';
import { CSV_COLUMNS, CSV_DATE } from './weather-csv.ts';

/** The days as CSV: a header, one row a day, an empty cell where nothing was measured; a column nobody measured is left out. */
export function weatherCsv(rows: readonly DailyWeather[]): string {
  const columns = CSV_COLUMNS.filter(({ holds, needed }) => needed || rows.some((row) => row[holds] !== undefined));
  const lines = rows.map((row) => [row.day, ...columns.map(({ holds }) => written(row[holds]))].join(','));
  return `${[[CSV_DATE, ...columns.map(({ name }) => name)].join(','), ...lines].join('\n')}\n`;
}

/** A figure as the form takes it: with all its digits, and never with a power of ten. */
function written(value: number | undefined): string {
  if (value === undefined) return '';
  const digits = String(value);
  return digits.includes('e') ? value.toFixed(20).replace(/\.?0+$/, '') : digits;
}
