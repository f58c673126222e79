/**
 * The seasons of a record as members of an ensemble: each stands for a way the season being planned may go on, after the
 * days that have been seen.
 */
import type { DailyWeather } from '../garden/weather.ts';
import type { Climate, SeasonWeather } from './climate.ts';
import { usualOf } from './logged.ts';
import { memory } from './remembered.ts';
import { seasonIndex, seasonOf } from './season.ts';
import { overlaid, seenOf } from './season-weather.ts';

const joined = memory<Climate, number, readonly SeasonWeather[]>();

/**
 * The record's seasons with the logged days of a season laid over each, measurement by measurement. A member keeps the
 * number of the season it comes from. Without logged days in it they are the record's own.
 */
export function membersFor(climate: Climate, season: number): readonly SeasonWeather[] {
  return joined(climate, season, () => {
    const days = loggedIn(climate, season).map(seenOf);
    const { seasons, seasonTurn } = climate;
    return days.length === 0 ? seasons : seasons.map((member) => overlaid(seasonTurn, member, days));
  });
}

const logs = new WeakMap<Climate, ReadonlyMap<number, readonly DailyWeather[]>>();

/** Logged days of a season, oldest first. */
export function loggedIn(climate: Climate, season: number): readonly DailyWeather[] {
  const known = logs.get(climate) ?? bySeason(climate);
  logs.set(climate, known);
  return known.get(season) ?? [];
}

function bySeason({ logged, seasonTurn }: Climate): ReadonlyMap<number, readonly DailyWeather[]> {
  const seasons = new Map<number, DailyWeather[]>();
  for (const row of logged) {
    const season = seasonOf(seasonTurn, row.day);
    const days = seasons.get(season);
    if (days === undefined) seasons.set(season, [row]);
    else days.push(row);
  }
  return seasons;
}

/** Index of the last day of a season whose minimum was seen; 0 where none was. */
export function seenTo(climate: Climate, season: number): number {
  const last = loggedIn(climate, season).findLast(({ tminC }) => tminC !== undefined);
  return last === undefined ? 0 : seasonIndex(climate.seasonTurn, last.day);
}

/**
 * The climate that holds what is worked out for a season: the one without the garden's own weather where nothing of the
 * season or of the one before it was logged, since its members are then the record's own in any year.
 */
export function holderOf(climate: Climate, season: number): { holder: Climate; season: number | 'any' } {
  const unlogged = [season - 1, season].every((at) => loggedIn(climate, at).length === 0);
  return unlogged ? { holder: usualOf(climate), season: 'any' } : { holder: climate, season };
}
