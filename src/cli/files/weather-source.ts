/**
 * Weather records as files.
 */
import { InputRefused, type Problem, problemLine } from '../../garden/problem.ts';
import type { DailyWeather } from '../../garden/weather.ts';
import { weatherReader } from '../../garden/weather-file.ts';
import type { WeatherUse } from '../../garden/weather-rows.ts';
import { counted } from '../text/counted.ts';
import { readLines } from './files.ts';

/** Problems told one by one; of a file in the wrong units every line is one. House default. */
const MOST_TOLD = 50;

/** A weather file whose good rows are to be used. */
export interface WeatherRows {
  days: readonly DailyWeather[];
  /** Rows that gave way to a later row of the same date. */
  duplicates: number;
  /** Values left out because the record's own keepers doubt them. */
  doubted: number;
  /** Rows left out, when the good ones were to be kept; of very many the first ones. */
  problems: readonly Problem[];
  /** How many more there are. */
  moreProblems?: number;
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
  const reader = weatherReader(use);
  await readLines(cwd, name, (lines) => reader.take(lines));
  const { rows, problems, ...notes } = reader.end();
  if (problems.length > 0 && (!keepGood || rows.length === 0)) throw refused(name, problems, notes.moreProblems);
  if (rows.length > 0) return { days: rows, problems, ...notes };
  const empty = { where: name, what: 'holds no day.', mend: 'Give a row a day, such as 2018-04-15,-1.1,6.7,0,0,0.' };
  throw new InputRefused('The weather file cannot be used.', [empty]);
}

/** What else there is to say of a file that was read. */
export function fileNotes(
  name: string,
  { duplicates, doubted, problems, moreProblems }: Omit<WeatherRows, 'days'>,
): string[] {
  return [
    ...(duplicates === 0 ? [] : [`${counted(duplicates, 'row')} gave way to a later row of the same date.`]),
    ...(doubted === 0
      ? []
      : [
          `${counted(doubted, 'value')} left out: the record itself marks ${doubted === 1 ? 'it' : 'them'} as doubtful.`,
        ]),
    ...(problems.length === 0 ? [] : ['Left out:', ...told(name, problems, moreProblems).map(problemLine)]),
  ];
}

/** The refusal of a file, naming each problem; of very many the first ones. */
export function refused(name: string, problems: readonly Problem[], moreProblems = 0): InputRefused {
  const all = problems.length + moreProblems;
  const count = all === 1 ? 'one problem' : `${all} problems`;
  const about = `The weather file cannot be used: ${count}. Nothing was written.`;
  return new InputRefused(about, told(name, problems, moreProblems));
}

/** Problems with the file they are in; of very many the first ones. */
function told(name: string, problems: readonly Problem[], moreProblems = 0): Problem[] {
  const shown = problems
    .slice(0, MOST_TOLD)
    .map(({ where, what, mend }) => ({ where: `${name}, ${where}`, what, mend }));
  const more = problems.length + moreProblems - shown.length;
  if (more === 0) return shown;
  return [...shown, { where: name, what: `has ${more} more problems.`, mend: 'Mend these first.' }];
}
