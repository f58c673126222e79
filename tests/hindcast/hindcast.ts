/**
 * A hindcast: standing on a day of a past year with nothing but the thirty seasons before it and that year so far, how
 * well would the dates still to come have been told?
 */

import type { Climate, FreezeEvent } from '../../src/climate/climate.ts';
import { freezeOdds } from '../../src/climate/freeze.ts';
import { seasonFreeze } from '../../src/climate/freeze-record.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import { heatOdds } from '../../src/climate/heat.ts';
import { withWeather } from '../../src/climate/logged.ts';
import type { Odds } from '../../src/climate/odds.ts';
import { dayOfIndex, seasonTurnOf } from '../../src/climate/season.ts';
import { seasonsOfRows } from '../../src/climate/season-weather.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { type Day, daysBetween, inYear, type MonthDay } from '../../src/measures/days.ts';

/** A daily record and where it was measured. */
export interface Place {
  name: string;
  latitude: number;
  longitude: number;
  rows: readonly DailyWeather[];
}

/** What is foretold. */
export const TARGETS = ['last spring freeze', '200 degree-days', '400 degree-days', 'first autumn freeze'] as const;
export type Target = (typeof TARGETS)[number];

/** Where one stands; north of the equator. */
export const STANDINGS: readonly MonthDay[] = ['03-01', '04-15', '08-01'];

/** One date foretold and the date it was. */
export interface Trial {
  place: string;
  target: Target;
  standing: MonthDay;
  year: number;
  /** Days the median came after the date; the season's own, and the plain one that knows nothing of it. */
  errorDays: number;
  plainErrorDays: number;
  inside: boolean;
}

/** Base of the degree-days: that of cool-season crops, °C (agro:S2), counted by single sine from midwinter. */
const HEAT = { method: 'single-sine', baseC: 4.4 } as const;

/**
 * Every trial of a place over some years. Dates already past where one stands are left out, and dates that a gap of the
 * record hides.
 */
export function trialsOf(place: Place, years: readonly number[]): Trial[] {
  const { name } = place;
  return years.flatMap((year) => {
    const past = pastOf(place, year);
    const actuals = new Map(TARGETS.map((target) => [target, actualDate(place, target, year)]));
    return STANDINGS.flatMap((standing) => {
      const today = inYear(standing, year);
      const known = knownOn(past, place, today);
      return TARGETS.flatMap((target): Trial[] => {
        const actual = actuals.get(target);
        const [odds, plain] = [dateOf(known, target, year), dateOf(past, target, year)];
        if (actual === undefined || actual <= today || !isWhole(odds) || !isWhole(plain)) return [];
        const errorDays = daysBetween(actual, odds.median);
        const plainErrorDays = daysBetween(actual, plain.median);
        const inside = odds.early <= actual && actual <= odds.late;
        return [{ place: name, target, standing, year, errorDays, plainErrorDays, inside }];
      });
    });
  });
}

/** What the thirty seasons before a year tell of it. */
export function pastOf({ name, latitude, longitude, rows }: Place, year: number): Climate {
  const site = { latitude, longitude, origin: name, frostOffsetDays: 0, tempOffsetC: 0 };
  return climateFromRecord({ ...site, rows, before: year });
}

/** The same, once the year has been seen up to a day. */
export function knownOn(past: Climate, { rows }: Place, today: Day): Climate {
  return withWeather(past, observed(rows, Number(today.slice(0, 4)), today), today);
}

/** The day it was, from the measured days of that year alone; nothing where it never came or a gap may hide it. */
export function actualDate(place: Place, target: Target, year: number): Day | undefined {
  const turn = seasonTurnOf(place.latitude);
  const rows = place.rows.filter(({ day }) => day.startsWith(`${year}-`));
  const [own] = seasonsOfRows(turn, rows, 0);
  if (own === undefined) return undefined;
  const freeze = (event: FreezeEvent): Day | undefined => {
    const index = seasonFreeze(turn, own, event, 32);
    return typeof index === 'number' ? dayOfIndex(turn, year, index) : undefined;
  };
  switch (target) {
    case 'last spring freeze':
      return freeze('last-spring');
    case 'first autumn freeze':
      return freeze('first-autumn');
    default:
      return dateOf({ ...pastOf(place, year), seasons: [own] }, target, year)?.median;
  }
}

/** The days of a year and of the autumn and winter before it, up to a day, as the garden would have logged them. */
function observed(rows: readonly DailyWeather[], year: number, to: Day) {
  const from = inYear('07-01', year - 1);
  return rows.filter(({ day }) => day >= from && day <= to).map((row) => ({ ...row, kind: 'observed' as const }));
}

/** A date as a climate foretells it. */
export function dateOf(climate: Climate, target: Target, season: number): Odds {
  switch (target) {
    case 'last spring freeze':
      return freezeOdds(climate, { event: 'last-spring', limitF: 32, season });
    case 'first autumn freeze':
      return freezeOdds(climate, { event: 'first-autumn', limitF: 32, season });
    case '200 degree-days':
      return heatOdds(climate, { ...HEAT, from: inYear('01-01', season), sum: 200 }).odds;
    case '400 degree-days':
      return heatOdds(climate, { ...HEAT, from: inYear('01-01', season), sum: 400 }).odds;
    default:
      return target satisfies never;
  }
}

function isWhole(odds: Odds | undefined): odds is Required<Pick<Odds, 'early' | 'median' | 'late'>> & Odds {
  return odds?.early !== undefined && odds.median !== undefined && odds.late !== undefined;
}

/** What some trials came to. */
export interface Score {
  trials: number;
  insideShare: number;
  /** The 95 % interval of that share, by Wilson. */
  interval: readonly [number, number];
  meanErrorDays: number;
  plainMeanErrorDays: number;
}

/** Sums trials up. */
export function scoreOf(trials: readonly Trial[]): Score {
  const n = trials.length;
  const mean = (of: (trial: Trial) => number) => trials.reduce((sum, trial) => sum + of(trial), 0) / n;
  const share = mean(({ inside }) => Number(inside));
  return {
    trials: n,
    insideShare: share,
    interval: wilson(share, n),
    meanErrorDays: mean(({ errorDays }) => Math.abs(errorDays)),
    plainMeanErrorDays: mean(({ plainErrorDays }) => Math.abs(plainErrorDays)),
  };
}

/** z of a two-sided 95 % interval. */
const Z_95 = 1.96;

function wilson(share: number, n: number): [number, number] {
  const z2 = Z_95 ** 2;
  const middle = (share + z2 / (2 * n)) / (1 + z2 / n);
  const reach = (Z_95 * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n * n))) / (1 + z2 / n);
  return [middle - reach, middle + reach];
}
