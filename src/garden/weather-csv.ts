/**
 * The shared form of a daily weather record: CSV with a header, one row a day, an empty cell where nothing was measured.
 */
import { CsvError, parse } from 'csv-parse/sync';
import { isDay } from '../measures/days.ts';
import { suggestion } from './nearest-name.ts';
import type { Problem } from './problem.ts';
import type { DailyWeather } from './weather.ts';
import { extremesProblem, isPossible, type Measured, WEATHER_LIMITS } from './weather-limits.ts';
import {
  FileProblems,
  tooManyDays,
  unusable,
  type WeatherFile,
  type WeatherReader,
  type WeatherUse,
} from './weather-rows.ts';

/** The column of the day. */
export const CSV_DATE = 'date';

/** The columns of what was measured; those a record cannot be without are needed. */
export const CSV_COLUMNS: readonly { name: string; holds: Measured; needed?: true }[] = [
  { name: 'tmin_c', holds: 'tminC', needed: true },
  { name: 'tmax_c', holds: 'tmaxC', needed: true },
  { name: 'prcp_mm', holds: 'rainMm' },
  { name: 'snow_mm', holds: 'newSnowMm' },
  { name: 'snwd_mm', holds: 'snowDepthMm' },
  { name: 'watering_mm', holds: 'wateringMm' },
];
/** Longest cell said back. */
const SHOWN_CHARACTERS = 60;
const NAMES = [CSV_DATE, ...CSV_COLUMNS.map(({ name }) => name)];

/** Columns without which a file is of no use; the others may be missing whole. */
const NEEDED: Readonly<Record<WeatherUse, readonly string[]>> = {
  record: [CSV_DATE, ...CSV_COLUMNS.filter(({ needed }) => needed).map(({ name }) => name)],
  log: [CSV_DATE],
};

/**
 * Reads the columns date, tmin_c, tmax_c, prcp_mm, snow_mm, snwd_mm and watering_mm, in any order; the last four may be
 * left out, of a log all but the date.
 *
 * @param linesBefore empty lines that have gone by
 */
export function weatherCsvReader(use: WeatherUse, linesBefore: number): WeatherReader {
  const read: Gathering = { byDay: new Map(), duplicates: 0, problems: new FileProblems() };
  let [names, before]: [string[] | undefined, number] = [undefined, linesBefore];
  let broken: WeatherFile | undefined;
  return {
    take(texts) {
      const found = linesOf(texts, before);
      before += texts.length;
      if ('problem' in found) {
        broken = unusable(found.problem);
        return false;
      }
      for (const line of found.lines) {
        if (names === undefined) {
          names = line.cells.map((name) => name.toLowerCase());
          const problems = headerProblems(names, line.line, use);
          if (problems.length > 0) broken = { rows: [], duplicates: 0, doubted: 0, problems };
        } else broken = keepLine(read, line, names);
        if (broken !== undefined) return false;
      }
      return true;
    },
    end() {
      if (broken !== undefined) return broken;
      if (names === undefined) return { rows: [], duplicates: 0, doubted: 0, problems: headerProblems([], 1, use) };
      const rows = [...read.byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
      return { rows, duplicates: read.duplicates, doubted: 0, ...read.problems.told() };
    },
  };
}

/** What has been read so far. */
interface Gathering {
  byDay: Map<string, DailyWeather>;
  duplicates: number;
  problems: FileProblems;
}

/** Keeps a line; returns what the whole file comes to where it cannot go on. */
function keepLine(into: Gathering, line: Line, names: readonly string[]): WeatherFile | undefined {
  const read = readLine(line, names);
  if ('problems' in read) {
    into.problems.add(...read.problems);
    return undefined;
  }
  const { row } = read;
  if (into.byDay.has(row.day)) into.duplicates += 1;
  into.byDay.set(row.day, row);
  const many = tooManyDays(into.byDay.size, line.line);
  return many && unusable(many);
}

interface Line {
  line: number;
  cells: string[];
}

/** The cells of some lines, by the number each has in the file. */
function linesOf(texts: readonly string[], before: number): { lines: Line[] } | { problem: Problem } {
  try {
    const options = { trim: true, info: true, skip_empty_lines: true, relax_column_count: true };
    const parsed = parse(texts.join('\n'), options) as unknown as { record: string[]; info: { lines: number } }[];
    return { lines: parsed.map(({ record, info }) => ({ line: before + info.lines, cells: record })) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const where = `line ${before + Number(error.lines ?? 1)}`;
    return {
      problem: { where, what: 'The quotes on this line do not match.', mend: 'Leave quotes out: no cell needs them.' },
    };
  }
}

function headerProblems(names: readonly string[], line: number, use: WeatherUse): Problem[] {
  const where = `line ${line}`;
  const mend = `Start the file with the line ${NAMES.slice(0, -1).join(',')}`;
  if (!names.some((name) => NAMES.includes(name))) return [{ where, what: 'There is no header.', mend: `${mend}.` }];
  const unknown = names.filter((name) => !NAMES.includes(name)).map((name) => name.slice(0, SHOWN_CHARACTERS));
  const repeated = names.filter((name, index) => NAMES.includes(name) && names.indexOf(name) !== index);
  const absent = NEEDED[use].filter((name) => !names.includes(name));
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
  const day = cellOf(CSV_DATE);
  const row: DailyWeather = { day };
  const problems: Problem[] = [];
  if (!isDay(day)) {
    problems.push({
      where,
      what: `"${day.slice(0, SHOWN_CHARACTERS)}" is not a real date.`,
      mend: 'Give a real date as YYYY-MM-DD, such as 2018-04-15.',
    });
  }
  for (const { name, holds } of CSV_COLUMNS) {
    const cell = cellOf(name);
    if (cell === '') continue;
    if (/^[+-]?\d+(\.\d+)?$/.test(cell) && isPossible(holds, Number(cell)))
      // A minus before nought says nothing.
      row[holds] = Number(cell) || 0;
    else
      problems.push({
        where,
        what: `${name} is "${cell.slice(0, SHOWN_CHARACTERS)}".`,
        mend: WEATHER_LIMITS[holds].mend,
      });
  }
  const crossed = problems.length === 0 ? extremesProblem(row, where) : undefined;
  if (crossed !== undefined) problems.push(crossed);
  return problems.length > 0 ? { problems } : { row };
}
