/**
 * Weather stations around a garden as its page tells them: how far, how high, and their published dates.
 */
import { type NearStation, weightedFreezeDates } from '../climate/stations.ts';
import type { MonthDay } from '../measures/days.ts';
import { formatDay } from '../measures/quantity.ts';
import { KM_PER_MILE, M_PER_FOOT, type UnitSystem } from '../measures/units.ts';

/** A day of any year, to write a month and day by. */
const ANY_YEAR = 2001;

/** Height differences below this are told as none, m: no date moves by a whole day. House default. */
const LEVEL_M = 10;

/** "Watertown, WI: 12 km away, 30 m higher up; freezes until 6 May and from 4 October in half of the years". */
export function stationWords({ station, distanceKm, heightDifferenceM }: NearStation, units: UnitSystem): string {
  const { name, state, lastSpringP50, firstFallP50 } = station;
  const height = heightDifferenceM === undefined ? '' : `, ${heightWords(heightDifferenceM, units)}`;
  return `${name}, ${state}: ${distanceWords(distanceKm, units)} away${height}; ${datesWords(lastSpringP50, firstFallP50, units)}`;
}

/** What the stations around give together. */
export function togetherWords(near: readonly NearStation[], units: UnitSystem): string {
  const dates = weightedFreezeDates(near);
  return datesWords(dates?.['last-spring'].p50, dates?.['first-autumn'].p50, units);
}

function distanceWords(km: number, units: UnitSystem): string {
  return units === 'us' ? `${Math.round(km / KM_PER_MILE)} miles` : `${Math.round(km)} km`;
}

function heightWords(metres: number, units: UnitSystem): string {
  if (Math.abs(metres) < LEVEL_M) return 'as high up';
  const height =
    units === 'us' ? `${Math.round(Math.abs(metres) / M_PER_FOOT)} ft` : `${Math.round(Math.abs(metres))} m`;
  return `${height} ${metres > 0 ? 'higher up' : 'lower down'}`;
}

function datesWords(spring: MonthDay | undefined, autumn: MonthDay | undefined, units: UnitSystem): string {
  if (spring === undefined || autumn === undefined) return 'no dates of freezes';
  const day = (of: MonthDay): string => formatDay(`${ANY_YEAR}-${of}`, units);
  return `in half of the years freezes are over by ${day(spring)} and have come again by ${day(autumn)}`;
}
