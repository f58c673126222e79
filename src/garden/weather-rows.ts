/**
 * What reading a weather file comes to, and what reads it: some lines at a time, so that no file is too long for it.
 */
import type { Problem } from './problem.ts';
import type { DailyWeather } from './weather.ts';

/** A weather file as read. */
export interface WeatherFile {
  /** Its days in calendar order, each once. */
  rows: DailyWeather[];
  /** Rows, or single values, that gave way to a later one of the same date. */
  duplicates: number;
  /** Values left out because the record's own keepers doubt them, or presumed them. */
  doubted: number;
  /** What is wrong with it; of very many the first ones. */
  problems: Problem[];
  /** How many more problems there are; absent where all are told. */
  moreProblems?: number;
}

/** What a file is read for: a long record needs both extremes, a log of single days may hold whatever was measured. */
export type WeatherUse = 'record' | 'log';

/** How far the reading of a file has come. */
export interface ReadSoFar {
  lines: number;
  of: number;
}

/** Lines read before a reader says how far it is: some hundredths of a second. House default. */
export const LINES_AT_ONCE = 4000;

/** Longest line a file may have: one of GHCN-Daily has 269 characters. House default: some forty times that. */
export const MOST_CHARACTERS = 10_000;

/** Reads a file by its lines, in order. */
export interface WeatherReader {
  /** Takes the next lines, without their ends; returns whether more are wanted. */
  take(lines: readonly string[]): boolean;
  /** What the file came to. */
  end(): WeatherFile;
}

/**
 * Most days one record may hold: four centuries. House default: the longest daily series there are began around 1720 (from
 * memory).
 */
const MOST_DAYS = 400 * 366;

/** Most problems kept of a file: of one in the wrong units each line is one. House default: twenty times what is told. */
const MOST_PROBLEMS = 1000;

/** The problems of a file: the first ones kept, the others counted. */
export class FileProblems {
  readonly #kept: Problem[] = [];
  #count = 0;

  add(...problems: readonly Problem[]): void {
    this.#count += problems.length;
    this.#kept.push(...problems.slice(0, MOST_PROBLEMS - this.#kept.length));
  }

  /** As a file has them. */
  told(): Pick<WeatherFile, 'problems' | 'moreProblems'> {
    const more = this.#count - this.#kept.length;
    return { problems: this.#kept, ...(more === 0 ? {} : { moreProblems: more }) };
  }
}

/** A file of which nothing can be used, and why. */
export function unusable(problem: Problem): WeatherFile {
  return { rows: [], duplicates: 0, doubted: 0, problems: [problem] };
}

/** What is wrong with a file of more days than a record can have; nothing up to then. */
export function tooManyDays(days: number, line: number): Problem | undefined {
  if (days <= MOST_DAYS) return undefined;
  const what = `More than ${MOST_DAYS} days stand up to here.`;
  return { where: `line ${line}`, what, mend: 'Give the days of one place, at most four centuries of them.' };
}
