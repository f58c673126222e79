/**
 * Daily rows laid out season by season.
 */

import type { DailyWeather } from '../garden/weather.ts';
import { type Day, monthDayOf } from '../measures/days.ts';
import { DAYS_IN_SEASON, type DayWeather, type SeasonTurn, type SeasonWeather, type WeatherField } from './climate.ts';
import { seasonIndex, seasonOf } from './season.ts';

/** The measurements of a day, in the order of the log. */
const FIELDS: readonly WeatherField[] = ['tminC', 'tmaxC', 'rainMm', 'newSnowMm', 'snowDepthMm', 'wateringMm'];

/** The measurements that a difference between garden and record moves. */
const TEMPERATURES: ReadonlySet<WeatherField> = new Set(['tminC', 'tmaxC']);

const LEAP_INDICES: Readonly<Record<SeasonTurn, number>> = {
  '01-01': seasonIndex('01-01', '2000-02-29'),
  '07-01': seasonIndex('07-01', '2000-02-29'),
};

/** Index that 28 and 29 February share. */
export function leapIndex(turn: SeasonTurn): number {
  return LEAP_INDICES[turn];
}

type SeasonRows = Record<WeatherField, (number | undefined)[]> & { leapDay?: DayWeather };

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
    place(held, seasonIndex(turn, row.day), row.day, moved(row, offsetC));
  }
  return [...seasons].sort(([a], [b]) => a - b).map(([season, weather]) => ({ season, ...weather }));
}

function emptySeason(): SeasonRows {
  const empty = (): (number | undefined)[] => Array(DAYS_IN_SEASON).fill(undefined);
  return {
    tminC: empty(),
    tmaxC: empty(),
    rainMm: empty(),
    newSnowMm: empty(),
    snowDepthMm: empty(),
    wateringMm: empty(),
  };
}

/** A day's measurements alone, its temperatures moved. */
function moved(row: DailyWeather, offsetC: number): DayWeather {
  const known = FIELDS.flatMap((field) => {
    const value = row[field];
    return value === undefined ? [] : [[field, TEMPERATURES.has(field) ? value + offsetC : value] as const];
  });
  return Object.fromEntries(known);
}

function place(season: SeasonRows, index: number, day: Day, weather: DayWeather): void {
  if (monthDayOf(day) === '02-29') season.leapDay = weather;
  else for (const field of FIELDS) season[field][index - 1] = weather[field];
}

/**
 * A season with days laid over it, measurement by measurement: what was seen takes the place of what this season says,
 * and what was not seen stays. Snow is all its own: the depth this season had lying belongs to snow that may not have
 * fallen, and new snow without its water is not given this season's rain for it.
 */
export function overlaid(turn: SeasonTurn, season: SeasonWeather, days: readonly SeenDay[]): SeasonWeather {
  const { leapDay } = season;
  const laid: SeasonRows = emptySeason();
  for (const field of FIELDS) if (field !== 'snowDepthMm') laid[field] = [...season[field]];
  if (leapDay !== undefined) laid.leapDay = leapDay;
  for (const { day, weather } of days) {
    if (monthDayOf(day) === '02-29') laid.leapDay = { ...laid.leapDay, ...weather };
    else {
      const index = seasonIndex(turn, day);
      for (const field of FIELDS) if (field in weather) laid[field][index - 1] = weather[field];
    }
  }
  return { season: season.season, ...laid };
}

/** A logged day with what it takes the place of. */
export interface SeenDay {
  day: Day;
  weather: DayWeather;
}

/** What a logged day takes the place of: its measurements, and the rain of a day whose snow alone was measured. */
export function seenOf(row: DailyWeather): SeenDay {
  const weather = moved(row, 0);
  const snowAlone = weather.newSnowMm !== undefined && weather.rainMm === undefined;
  return { day: row.day, weather: snowAlone ? { ...weather, rainMm: undefined } : weather };
}

/** The one or two days at an index: two in February of a leap year. */
export function daysAt(turn: SeasonTurn, season: SeasonWeather, index: number): DayWeather[] {
  const at = index - 1;
  const day: DayWeather = {
    tminC: season.tminC[at],
    tmaxC: season.tmaxC[at],
    rainMm: season.rainMm[at],
    newSnowMm: season.newSnowMm[at],
    snowDepthMm: season.snowDepthMm[at],
    wateringMm: season.wateringMm[at],
  };
  return season.leapDay && index === leapIndex(turn) ? [day, season.leapDay] : [day];
}

/** Mean of a day's minimum and maximum, °C; absent when either is. */
export function dayMeanC({ tminC, tmaxC }: DayWeather): number | undefined {
  return tminC === undefined || tmaxC === undefined ? undefined : (tminC + tmaxC) / 2;
}
