/**
 * Invented seasons and climates, small enough to work out by hand.
 */

import { type Climate, DAYS_IN_SEASON, type FreezeDates, type SeasonWeather } from '../../src/climate/climate.ts';
import { freezeTable } from '../../src/climate/freeze-table.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import type { Station } from '../../src/handbook/stations.ts';
import { type Day, eachDay } from '../../src/measures/days.ts';

/** Temperatures of a day by its season index. */
export type TempsAt = (index: number) => { tminC?: number; tmaxC?: number };

/** One season whose days follow a rule. */
export function seasonOfTemps(season: number, tempsAt: TempsAt): SeasonWeather {
  const days = Array.from({ length: DAYS_IN_SEASON }, (_, i) => tempsAt(i + 1));
  const none = Array(DAYS_IN_SEASON).fill(undefined);
  return {
    season,
    tminC: days.map(({ tminC }) => tminC),
    tmaxC: days.map(({ tmaxC }) => tmaxC),
    rainMm: none,
    newSnowMm: none,
    snowDepthMm: none,
    wateringMm: none,
  };
}

/** Daily rows from one day to another, each 10–20 °C unless a rule says otherwise. */
export function rowsBetween(
  from: Day,
  to: Day,
  rule: (day: Day) => Partial<DailyWeather> = () => ({}),
): DailyWeather[] {
  return eachDay(from, to).map((day) => ({ day, tminC: 10, tmaxC: 20, ...rule(day) }));
}

/** A northern climate without seasons, flat at 5–15 °C and without freeze dates, unless said otherwise. */
export function inventedClimate(parts: Partial<Climate> = {}): Climate {
  return {
    basis: 'monthly-normals',
    origin: 'invented',
    confidence: 'assumed',
    latitude: 45,
    longitude: 0,
    seasonTurn: '01-01',
    freezes: freezeTable(() => ({ kind: 'none' })),
    seasons: [],
    logged: [],
    frostOffsetDays: 0,
    normals: { tminC: Array(12).fill(5), tmaxC: Array(12).fill(15) },
    notes: [],
    ...parts,
  };
}

/** An invented climate with the same freeze dates for every limit. */
export function climateWithFreezes(
  spring: FreezeDates,
  autumn: FreezeDates,
  seasonTurn: Climate['seasonTurn'] = '01-01',
): Climate {
  return inventedClimate({
    seasonTurn,
    latitude: seasonTurn === '01-01' ? 45 : -45,
    freezes: freezeTable((_, event) => (event === 'last-spring' ? spring : autumn)),
  });
}

/** An invented station due north of the equator at longitude 0; one degree of latitude is 111.2 km. */
export function inventedStation(id: string, latitude: number, parts: Partial<Station> = {}): Station {
  return {
    id,
    name: id,
    state: 'XX',
    latitude,
    longitude: 0,
    elevationM: 200,
    lastSpringP50: '05-10',
    lastSpringP90: '04-25',
    firstFallP50: '09-28',
    firstFallP90: '10-12',
    seasonDaysP50: 140,
    seasonDaysP90: 120,
    normals: {
      tmaxC: [-1, 1, 7, 14, 20, 25, 28, 27, 22, 15, 7, 1],
      tminC: [-11, -9, -4, 2, 8, 13, 16, 15, 10, 4, -2, -8],
    },
    flag: 'S',
    yearRoundFreeze: false,
    wrapsYear: false,
    ...parts,
  };
}

/** An invented station with a freeze in every month. */
export function yearRoundStation(id: string, latitude: number): Station {
  const {
    lastSpringP50: _a,
    lastSpringP90: _b,
    firstFallP50: _c,
    firstFallP90: _d,
    ...rest
  } = inventedStation(id, latitude);
  return { ...rest, yearRoundFreeze: true, seasonDaysP50: 61 };
}
