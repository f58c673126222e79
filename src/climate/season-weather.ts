/**
 * Daily rows laid out season by season.
 */

import type { DailyWeather } from '../garden/weather.ts';
import { type Day, monthDayOf } from '../measures/days.ts';
import { DAYS_IN_SEASON, type SeasonTurn, type SeasonWeather } from './climate.ts';
import { seasonIndex, seasonOf } from './season.ts';

/** One day's minimum and maximum, °C; absent where not measured. */
interface DayTemps {
  tminC?: number | undefined;
  tmaxC?: number | undefined;
}

const LEAP_INDICES: Readonly<Record<SeasonTurn, number>> = {
  '01-01': seasonIndex('01-01', '2000-02-29'),
  '07-01': seasonIndex('07-01', '2000-02-29'),
};

/** Index that 28 and 29 February share. */
export function leapIndex(turn: SeasonTurn): number {
  return LEAP_INDICES[turn];
}

interface SeasonRows {
  tminC: (number | undefined)[];
  tmaxC: (number | undefined)[];
  leapDay?: { tminC?: number; tmaxC?: number };
}

/**
 * Rows gathered into seasons, oldest first. Days without a row stay absent; of two rows for one day the later counts.
 *
 * @param offsetC degrees added to every temperature
 */
export function seasonsOfRows(turn: SeasonTurn, rows: readonly DailyWeather[], offsetC: number): SeasonWeather[] {
  const seasons = new Map<number, SeasonRows>();
  for (const row of rows) {
    const season = seasonOf(turn, row.day);
    const held = seasons.get(season) ?? emptySeason();
    seasons.set(season, held);
    place(held, seasonIndex(turn, row.day), row, offsetC);
  }
  return [...seasons].sort(([a], [b]) => a - b).map(([season, temps]) => ({ season, ...temps }));
}

function emptySeason(): SeasonRows {
  return { tminC: Array(DAYS_IN_SEASON).fill(undefined), tmaxC: Array(DAYS_IN_SEASON).fill(undefined) };
}

function place(season: SeasonRows, index: number, row: { day: Day } & DayTemps, offsetC: number): void {
  const tminC = row.tminC === undefined ? undefined : row.tminC + offsetC;
  const tmaxC = row.tmaxC === undefined ? undefined : row.tmaxC + offsetC;
  if (monthDayOf(row.day) === '02-29') {
    season.leapDay = { ...(tminC === undefined ? {} : { tminC }), ...(tmaxC === undefined ? {} : { tmaxC }) };
    return;
  }
  season.tminC[index - 1] = tminC;
  season.tmaxC[index - 1] = tmaxC;
}

/** The one or two days at an index: two in February of a leap year. */
export function daysAt(turn: SeasonTurn, season: SeasonWeather, index: number): DayTemps[] {
  const day = { tminC: season.tminC[index - 1], tmaxC: season.tmaxC[index - 1] };
  return season.leapDay && index === leapIndex(turn) ? [day, season.leapDay] : [day];
}

/** Mean of a day's minimum and maximum, °C; absent when either is. */
export function dayMeanC({ tminC, tmaxC }: DayTemps): number | undefined {
  return tminC === undefined || tmaxC === undefined ? undefined : (tminC + tmaxC) / 2;
}
