/**
 * Weather records as files.
 */
import { InputRefused, type Problem, problemLine } from '../garden/problem.ts';
import type { DailyWeather } from '../garden/weather.ts';
import { readWeatherFile } from '../garden/weather-file.ts';
import type { WeatherUse } from '../garden/weather-rows.ts';
import { counted } from './counted.ts';
import { readText } from './files.ts';

/** Problems told one by one; of a file in the wrong units every line is one. House default. */
const MOST_TOLD = 50;

/** A weather file whose good rows are to be used. */
export interface WeatherRows {
  days: readonly DailyWeather[];
  /** Rows that gave way to a later row of the same date. */
  duplicates: number;
  /** Values left out because the record's own keepers doubt them. */
  doubted: number;
  /** Rows left out, when the good ones were to be kept. */
  problems: readonly Problem[];
}

/**
 * Reads a weather file, plain or gzip.
 *
 * @param keepGood leaves bad rows out instead of refusing the file
 * @throws {InputRefused} naming each bad line, or when no row is left
 */
export async function readWeather(
  cwd: string,
  name: string,
  keepGood: boolean,
  use: WeatherUse = 'record',
): Promise<WeatherRows> {
  const { rows, duplicates, doubted, problems } = readWeatherFile(await readText(cwd, name), use);
  if (problems.length > 0 && (!keepGood || rows.length === 0)) throw refused(name, problems);
  if (rows.length > 0) return { days: rows, duplicates, doubted, problems };
  const empty = { where: name, what: 'holds no day.', mend: 'Give a row a day, such as 2018-04-15,-1.1,6.7,0,0,0.' };
  throw new InputRefused('The weather file cannot be used.', [empty]);
}

/** What else there is to say of a file that was read. */
export function fileNotes(name: string, { duplicates, doubted, problems }: Omit<WeatherRows, 'days'>): string[] {
  return [
    ...(duplicates === 0 ? [] : [`${counted(duplicates, 'row')} gave way to a later row of the same date.`]),
    ...(doubted === 0
      ? []
      : [
          `${counted(doubted, 'value')} left out: the record itself marks ${doubted === 1 ? 'it' : 'them'} as doubtful.`,
        ]),
    ...(problems.length === 0 ? [] : ['Left out:', ...told(name, problems).map(problemLine)]),
  ];
}

/** The refusal of a file, naming each problem; of very many the first ones. */
export function refused(name: string, problems: readonly Problem[]): InputRefused {
  const count = problems.length === 1 ? 'one problem' : `${problems.length} problems`;
  return new InputRefused(`The weather file cannot be used: ${count}. Nothing was written.`, told(name, problems));
}

/** Problems with the file they are in; of very many the first ones. */
function told(name: string, problems: readonly Problem[]): Problem[] {
  const shown = problems
    .slice(0, MOST_TOLD)
    .map(({ where, what, mend }) => ({ where: `${name}, ${where}`, what, mend }));
  const more = problems.length - shown.length;
  if (more === 0) return shown;
  return [...shown, { where: name, what: `has ${more} more problems.`, mend: 'Mend these first.' }];
}
