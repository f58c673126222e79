/**
 * A hindcast: standing on a day of a past year with nothing but the thirty seasons before it and that year so far, how
 * well would the dates still to come have been told?
 */

import type { Climate } from '../../src/climate/climate.ts';
import { freezeOdds } from '../../src/climate/freeze.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import { heatOdds } from '../../src/climate/heat.ts';
import { withWeather } from '../../src/climate/logged.ts';
import type { Odds } from '../../src/climate/odds.ts';
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

/** Every trial of a place over some years. Dates already past where one stands are left out. */
export function trialsOf({ name, latitude, longitude, rows }: Place, years: readonly number[]): Trial[] {
  return years.flatMap((year) => {
    const site = { latitude, longitude, origin: name, frostOffsetDays: 0, tempOffsetC: 0 };
    const past = climateFromRecord({ ...site, rows, before: year });
    const whole = withWeather(past, observed(rows, year, inYear('12-31', year)), inYear('12-31', year));
    return STANDINGS.flatMap((standing) => {
      const today = inYear(standing, year);
      const known = withWeather(past, observed(rows, year, today), today);
      return TARGETS.flatMap((target): Trial[] => {
        const actual = dateOf(whole, target, year)?.median;
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

/** The days of a year and of the autumn and winter before it, up to a day, as the garden would have logged them. */
function observed(rows: readonly DailyWeather[], year: number, to: Day) {
  const from = inYear('07-01', year - 1);
  return rows.filter(({ day }) => day >= from && day <= to).map((row) => ({ ...row, kind: 'observed' as const }));
}

function dateOf(climate: Climate, target: Target, season: number): Odds {
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
