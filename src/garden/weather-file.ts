/**
 * From the text of a daily weather record to its days: CSV with a header, one row a day, an empty cell where nothing
 * was measured. Every problem is reported with its line; a row with a problem is left out whole.
 */
import { CsvError, parse } from 'csv-parse/sync';
import { isDay } from '../measures/days.ts';
import { suggestion } from './nearest-name.ts';
import type { Problem } from './problem.ts';
import type { DailyWeather } from './weather.ts';

/** A weather file as read. */
export interface WeatherFile {
  /** Its days in calendar order, each once. */
  rows: DailyWeather[];
  /** Rows that gave way to a later row of the same date. */
  duplicates: number;
  problems: Problem[];
}

type Measured = Exclude<keyof DailyWeather, 'day'>;

/** A column of figures with the least and the most it may hold, both possible. */
interface Column {
  name: string;
  holds: Measured;
  least: number;
  most: number;
  mend: string;
}

const CELSIUS = { least: -90, most: 60, mend: 'Give degrees Celsius between -90 and 60, such as -3.3.' };

/**
 * Limits a little outside the records of the world (from memory: −89.2 and 56.7 °C; in one day 1.8 m of rain and
 * 2.3 m of snow; 11.8 m of lying snow): what passes them is a slip of unit or hand.
 */
const COLUMNS: readonly Column[] = [
  { name: 'tmin_c', holds: 'tminC', ...CELSIUS },
  { name: 'tmax_c', holds: 'tmaxC', ...CELSIUS },
  {
    name: 'prcp_mm',
    holds: 'rainMm',
    least: 0,
    most: 2000,
    mend: 'Give millimetres of water, 0 to 2000, such as 4.6.',
  },
  {
    name: 'snow_mm',
    holds: 'newSnowMm',
    least: 0,
    most: 2500,
    mend: 'Give millimetres of new snow, 0 to 2500, such as 81.',
  },
  {
    name: 'snwd_mm',
    holds: 'snowDepthMm',
    least: 0,
    most: 15_000,
    mend: 'Give millimetres of lying snow, 0 to 15000, such as 120.',
  },
];
const DATE = 'date';
const NAMES = [DATE, ...COLUMNS.map(({ name }) => name)];
/** Columns without which a record is of no use; the others may be missing whole. */
const NEEDED = [DATE, 'tmin_c', 'tmax_c'];

/**
 * Reads a weather file with the columns date, tmin_c, tmax_c, prcp_mm, snow_mm and snwd_mm, in any order; the last
 * three may be left out. Of several rows with one date the last counts.
 */
export function readWeatherFile(text: string): WeatherFile {
  const lines = linesOf(text);
  if ('problem' in lines) return { rows: [], duplicates: 0, problems: [lines.problem] };
  const [header, ...body] = lines.lines;
  const names = (header?.cells ?? []).map((name) => name.toLowerCase());
  const problems = headerProblems(names, header?.line ?? 1);
  if (problems.length > 0) return { rows: [], duplicates: 0, problems };
  return gathered(body.map((line) => readLine(line, names)));
}

interface Line {
  line: number;
  cells: string[];
}

function linesOf(text: string): { lines: Line[] } | { problem: Problem } {
  try {
    const parsed = parse(text, { bom: true, trim: true, info: true, skip_empty_lines: true, relax_column_count: true });
    const lines = parsed as unknown as { record: string[]; info: { lines: number } }[];
    return { lines: lines.map(({ record, info }) => ({ line: info.lines, cells: record })) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const where = `line ${Number(error.lines ?? 1)}`;
    return {
      problem: { where, what: 'The quotes on this line do not match.', mend: 'Leave quotes out: no cell needs them.' },
    };
  }
}

function headerProblems(names: readonly string[], line: number): Problem[] {
  const where = `line ${line}`;
  const mend = `Start the file with the line ${NAMES.join(',')}`;
  if (!names.some((name) => NAMES.includes(name))) return [{ where, what: 'There is no header.', mend: `${mend}.` }];
  const unknown = names.filter((name) => !NAMES.includes(name));
  const repeated = names.filter((name, index) => NAMES.includes(name) && names.indexOf(name) !== index);
  const absent = NEEDED.filter((name) => !names.includes(name));
  return [
    ...unknown.map((name) => ({
      where,
      what: `"${name}" is not a column this file knows.`,
      mend: suggestion(name, NAMES),
    })),
    ...repeated.map((name) => ({ where, what: `The column ${name} stands twice.`, mend: 'Leave one of them out.' })),
    ...absent.map((name) => ({ where, what: `The column ${name} is missing.`, mend: `${mend}.` })),
  ];
}

/** A line read: its day, or what is wrong with it. */
type Read = { row: DailyWeather } | { problems: Problem[] };

function readLine({ line, cells }: Line, names: readonly string[]): Read {
  const where = `line ${line}`;
  if (cells.length !== names.length) {
    const what = `${cells.length} cells stand under ${names.length} columns.`;
    return { problems: [{ where, what, mend: 'Give one cell a column, empty where nothing was measured.' }] };
  }
  const cellOf = (name: string): string => cells[names.indexOf(name)] ?? '';
  const day = cellOf(DATE);
  const row: DailyWeather = { day };
  const problems: Problem[] = [];
  if (!isDay(day)) {
    problems.push({
      where,
      what: `"${day}" is not a real date.`,
      mend: 'Give a real date as YYYY-MM-DD, such as 2018-04-15.',
    });
  }
  for (const column of COLUMNS) {
    const cell = cellOf(column.name);
    if (cell === '') continue;
    if (isPossible(cell, column)) row[column.holds] = Number(cell);
    else problems.push({ where, what: `${column.name} is "${cell}".`, mend: column.mend });
  }
  if (problems.length === 0 && row.tminC !== undefined && row.tmaxC !== undefined && row.tmaxC < row.tminC) {
    const what = `The day's highest, ${row.tmaxC} °C, is below its lowest, ${row.tminC} °C.`;
    problems.push({ where, what, mend: 'Swap the two, or leave both empty.' });
  }
  return problems.length > 0 ? { problems } : { row };
}

function isPossible(cell: string, { least, most }: Column): boolean {
  return /^[+-]?\d+(\.\d+)?$/.test(cell) && Number(cell) >= least && Number(cell) <= most;
}

function gathered(read: readonly Read[]): WeatherFile {
  const problems = read.flatMap((line) => ('problems' in line ? line.problems : []));
  const good = read.flatMap((line) => ('row' in line ? [line.row] : []));
  const byDay = new Map(good.map((row) => [row.day, row]));
  const rows = [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
  return { rows, duplicates: good.length - rows.length, problems };
}
