/**
 * The stations around a garden, and what they say together.
 */
import type { Station } from '../handbook/stations.ts';
import { type MonthDay, monthDayOf } from '../measures/days.ts';
import type { FreezeEvent } from './climate.ts';
import { PER_100_M_UP } from './fitted.ts';
import { dayOfIndex, seasonIndex } from './season.ts';

/** Mean radius of the earth, km. */
const EARTH_RADIUS_KM = 6371;

/** Nearer than this all stations weigh alike, km (measured best with six stations; see docs/climate.md). */
const LEAST_DISTANCE_KM = 5;

/** Stations a weighted mean is made of (see docs/climate.md). */
export const STATIONS_WEIGHTED = 6;

/** The season all station dates are laid on: the table is northern. */
const TURN = '01-01';
const ANY_SEASON = 2001;

/** A station as seen from a garden. */
export interface NearStation {
  station: Station;
  distanceKm: number;
  /** Metres the station lies above the garden; absent where the garden's height is not known. */
  heightDifferenceM?: number;
}

/** A place to look around from. */
interface Lookout {
  latitude: number;
  longitude: number;
  elevationM?: number;
}

/** The nearest stations by great circle, nearest first, those with a freeze in every month included. */
export function nearestStations(stations: readonly Station[], place: Lookout, count: number): NearStation[] {
  return stations
    .map((station) => seenFrom(place, station))
    .sort((a, b) => a.distanceKm - b.distanceKm || (a.station.id < b.station.id ? -1 : 1))
    .slice(0, count);
}

/** One station as seen from a place. */
export function seenFrom(place: Lookout, station: Station): NearStation {
  return {
    station,
    distanceKm: distanceKm(place, station),
    ...(place.elevationM === undefined ? {} : { heightDifferenceM: station.elevationM - place.elevationM }),
  };
}

function distanceKm(a: Lookout, b: Lookout): number {
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;
  const halfNorth = Math.sin(radians(b.latitude - a.latitude) / 2);
  const halfEast = Math.sin(radians(b.longitude - a.longitude) / 2);
  const chord = halfNorth ** 2 + Math.cos(radians(a.latitude)) * Math.cos(radians(b.latitude)) * halfEast ** 2;
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.sqrt(chord));
}

/** Freeze dates of one station as indices of a northern season; spring p90 is early, autumn p90 late. */
export interface StationFreezes {
  springP50: number;
  springP90: number;
  autumnP50: number;
  autumnP90: number;
}

/** A station's published dates; nothing where it has none, or has them across a year's end. */
export function stationFreezes(station: Station): StationFreezes | undefined {
  const { lastSpringP50, lastSpringP90, firstFallP50, firstFallP90 } = station;
  if (!lastSpringP50 || !lastSpringP90 || !firstFallP50 || !firstFallP90 || station.wrapsYear) return undefined;
  const index = (monthDay: MonthDay): number => seasonIndex(TURN, `${ANY_SEASON}-${monthDay}`);
  return {
    springP50: index(lastSpringP50),
    springP90: index(lastSpringP90),
    autumnP50: index(firstFallP50),
    autumnP90: index(firstFallP90),
  };
}

/** How much a station counts in a mean. */
export function weightOf({ distanceKm }: NearStation): number {
  return 1 / Math.max(distanceKm, LEAST_DISTANCE_KM);
}

/** Weighted mean of a figure of some stations; NaN of none. */
export function weightedMean(near: readonly NearStation[], figure: (near: NearStation) => number): number {
  const total = near.reduce((sum, station) => sum + weightOf(station), 0);
  return near.reduce((sum, station) => sum + weightOf(station) * figure(station), 0) / total;
}

/** Height-corrected weighted mean of the stations that have dates. Nothing where none has. */
export function weightedFreezes(near: readonly NearStation[]): StationFreezes | undefined {
  const dated = near.filter(({ station }) => stationFreezes(station) !== undefined);
  if (dated.length === 0) return undefined;
  const mean = (which: keyof StationFreezes): number =>
    weightedMean(dated, ({ station, heightDifferenceM = 0 }) => {
      const perHundredM = which.startsWith('spring') ? PER_100_M_UP.springDays : PER_100_M_UP.autumnDays;
      return (stationFreezes(station)?.[which] ?? Number.NaN) - (perHundredM * heightDifferenceM) / 100;
    });
  return {
    springP50: mean('springP50'),
    springP90: mean('springP90'),
    autumnP50: mean('autumnP50'),
    autumnP90: mean('autumnP90'),
  };
}

/** Dates of one freeze event in NOAA's sense: `p10`, the cautious one, is mirrored from the other two, not published. */
interface FreezeDeciles {
  p10: MonthDay;
  p50: MonthDay;
  p90: MonthDay;
}

/** The dates several stations make together, and how many had dates to give. */
interface WeightedFreezeDates extends Readonly<Record<FreezeEvent, FreezeDeciles>> {
  stationsUsed: number;
}

/** The weighted, height-corrected freeze dates at 0 °C around a garden; nothing where no station has dates. */
export function weightedFreezeDates(near: readonly NearStation[]): WeightedFreezeDates | undefined {
  const mean = weightedFreezes(near);
  if (!mean) return undefined;
  return {
    'last-spring': deciles(mean.springP50, mean.springP90),
    'first-autumn': deciles(mean.autumnP50, mean.autumnP90),
    stationsUsed: near.filter(({ station }) => stationFreezes(station) !== undefined).length,
  };
}

function deciles(p50: number, p90: number): FreezeDeciles {
  const date = (index: number): MonthDay => monthDayOf(dayOfIndex(TURN, ANY_SEASON, index));
  return { p10: date(2 * p50 - p90), p50: date(p50), p90: date(p90) };
}
