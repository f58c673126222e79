/**
 * What reading a weather file comes to.
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
  problems: Problem[];
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
