/**
 * Freeze dates counted from daily minima, season by season.
 *
 * A freeze is a night at or below the limit, compared in whole °F: records are read in whole °F and kept as °C to one
 * decimal, where 28 °F has become −2.2 and is no longer below its own limit. A season whose days are not all known is
 * left out of an event's count when more than five days are missing where the date could have been.
 */
import { fahrenheit } from '../measures/units.ts';
import {
  DAYS_IN_SEASON,
  type FreezeDates,
  type FreezeEvent,
  type FreezeLimitF,
  LAST_SPRING_INDEX,
  type SeasonTurn,
  type SeasonWeather,
} from './climate.ts';
import { leapIndex } from './season-weather.ts';

/** Missing days allowed where a date could have been. House default, after ten at the Utah Climate Center (agro:S5). */
export const MISSING_DAYS_ALLOWED = 5;

/** Spring is searched for gaps up to this index (30 June north, 28 December south). House default. */
const SPRING_GAPS_TO = 181;

/** Autumn is searched for gaps from this index (15 August north, 12 February south). House default. */
const AUTUMN_GAPS_FROM = 227;

/** Whether a minimum is at or below a limit in whole °F. */
export function freezesAt(tminC: number, limitF: FreezeLimitF): boolean {
  return Math.round(fahrenheit(tminC)) <= limitF;
}

/** What one season has to say of a freeze event: its index, that it did not come, or nothing for want of days. */
type SeasonFreeze = number | 'none' | 'unknown';

/** The freeze event of one season. */
export function seasonFreeze(
  turn: SeasonTurn,
  season: SeasonWeather,
  event: FreezeEvent,
  limitF: FreezeLimitF,
): SeasonFreeze {
  const spring = event === 'last-spring';
  const minima = Array.from({ length: DAYS_IN_SEASON }, (_, i) => lowestAt(turn, season, i + 1));
  const freezing = minima.map((tminC) => tminC !== undefined && freezesAt(tminC, limitF));
  const found = spring
    ? freezing.slice(0, LAST_SPRING_INDEX).lastIndexOf(true) + 1
    : freezing.indexOf(true, LAST_SPRING_INDEX) + 1;
  const gapsFrom = spring ? found : AUTUMN_GAPS_FROM - 1;
  const gapsTo = spring ? SPRING_GAPS_TO : found === 0 ? DAYS_IN_SEASON : found;
  const missing = minima.slice(gapsFrom, gapsTo).filter((tminC) => tminC === undefined).length;
  if (missing > MISSING_DAYS_ALLOWED) return 'unknown';
  return found === 0 ? 'none' : found;
}

function lowestAt(turn: SeasonTurn, season: SeasonWeather, index: number): number | undefined {
  const day = season.tminC[index - 1];
  const leap = index === leapIndex(turn) ? season.leapDay?.tminC : undefined;
  if (day === undefined || leap === undefined) return day ?? leap;
  return Math.min(day, leap);
}

/** What is counted. */
interface FreezeCount {
  event: FreezeEvent;
  limitF: FreezeLimitF;
  /** Days the freeze-free season is shorter at each end: added to spring dates, taken from autumn ones. */
  offsetDays: number;
  /** Index up to which the garden's own nights were seen, where they were: dates up to it stay. */
  seenTo?: number;
}

/** Freeze dates of an event over many seasons. */
export function countFreezes(
  turn: SeasonTurn,
  seasons: readonly SeasonWeather[],
  { event, limitF, offsetDays, seenTo = 0 }: FreezeCount,
): FreezeDates {
  const known = seasons.map((season) => seasonFreeze(turn, season, event, limitF)).filter((date) => date !== 'unknown');
  const shift = event === 'last-spring' ? offsetDays : -offsetDays;
  const indices = known
    .filter((date) => date !== 'none')
    .map((index) => (index <= seenTo ? index : Math.max(index + shift, seenTo)));
  return indices.length === 0
    ? { kind: 'none' }
    : { kind: 'counted', indices: indices.sort((a, b) => a - b), seasonsUsed: known.length };
}
