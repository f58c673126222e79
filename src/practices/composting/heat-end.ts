/**
 * When a hot pile's heat ends: the days its method takes, and what its problems cost.
 */
import type { Climate } from '../../climate/climate.ts';
import { heatOdds } from '../../climate/heat.ts';
import type { Odds } from '../../climate/odds.ts';
import type { Pile } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import type { Reason } from '../draft.ts';
import { COLD_DAYS, dayAfterWorking, HOT_DAYS, REST_BELOW_C } from './pile-life.ts';
import { setbacksOf, stoodStillDays, WORKS_ON_DAYS, worksOnFrom } from './setbacks.ts';

/** A span of days with the usual one in it. */
export interface HeatEnd {
  low: Day;
  usual: Day;
  high: Day;
}

/**
 * Span of days in which a hot pile's active life ends: 90 to 120 days of working weather from the day it was built and
 * the days it stood still, but never before it has worked on for {@link WORKS_ON_DAYS} after its last problem.
 *
 * @returns nothing where the garden's air is too cold for it to end by turning
 */
export function activeEnd(pile: Pile, climate: Climate): HeatEnd | undefined {
  const setbacks = setbacksOf(pile, climate);
  const still = stoodStillDays(setbacks, climate);
  const [low, usual, high] = [HOT_DAYS.low, HOT_DAYS.usual, HOT_DAYS.high].map((days) =>
    dayAfterWorking(climate, pile.built.day, days + still),
  );
  if (low === undefined || usual === undefined || high === undefined) return undefined;
  const from = worksOnFrom(pile, setbacks);
  if (from === undefined) return { low, usual, high };
  return {
    low: latestOf(low, workedOn(climate, from, WORKS_ON_DAYS.low)),
    usual: latestOf(usual, workedOn(climate, from, WORKS_ON_DAYS.usual)),
    high: latestOf(high, workedOn(climate, from, WORKS_ON_DAYS.high)),
  };
}

function workedOn(climate: Climate, from: Day, days: number): Day {
  return dayAfterWorking(climate, from, days) ?? addDays(from, days);
}

/**
 * Span of days in which a pile that nobody turns is ready: a year to two, the days it stood still on top, and never
 * before it has rotted on for {@link WORKS_ON_DAYS} after its last problem.
 */
export function coldEnd(pile: Pile, climate: Climate): { low: Day; high: Day } {
  const setbacks = setbacksOf(pile, climate);
  const still = stoodStillDays(setbacks, climate);
  const from = setbacks
    .map(({ until }) => until)
    .sort()
    .at(-1);
  const after = from === undefined ? pile.built.day : workedOn(climate, from, WORKS_ON_DAYS.high);
  return {
    low: latestOf(addDays(pile.built.day, COLD_DAYS.low + still), after),
    high: latestOf(addDays(pile.built.day, COLD_DAYS.high + still), after),
  };
}

/** What a pile's problems cost it, as a reason; nothing where it had none. */
export function setBackReasons(pile: Pile, climate: Climate): Reason[] {
  const setbacks = setbacksOf(pile, climate);
  const last = [...setbacks].sort((a, b) => (a.until < b.until ? -1 : 1)).at(-1);
  if (last === undefined) return [];
  const saw = {
    trouble: last.trouble,
    on: last.on,
    until: last.until,
    still: stoodStillDays(setbacks, climate),
    daysLow: WORKS_ON_DAYS.low,
    daysHigh: WORKS_ON_DAYS.high,
  };
  return [{ rule: 'pile-maturity.set-back', saw, source: 'house default' }];
}

/**
 * When a hot pile's heat ends, over the seasons of the record: the day it has had the usual days of work, a day counting
 * where its mean air reaches {@link REST_BELOW_C}, and never before it has worked on as usual after its last problem.
 * What the method itself leaves open (90 to 120 days) is not in it.
 */
export function heatEndOdds(pile: Pile, climate: Climate): Odds {
  const setbacks = setbacksOf(pile, climate);
  const sum = HOT_DAYS.usual + stoodStillDays(setbacks, climate);
  const from = worksOnFrom(pile, setbacks);
  const { odds } = heatOdds(climate, { from: pile.built.day, method: 'days-at-base', baseC: REST_BELOW_C, sum });
  return from === undefined ? odds : noEarlier(odds, workedOn(climate, from, WORKS_ON_DAYS.usual));
}

function noEarlier({ early, median, late, ...odds }: Odds, than: Day): Odds {
  return {
    ...odds,
    ...(early === undefined ? {} : { early: latestOf(early, than) }),
    ...(median === undefined ? {} : { median: latestOf(median, than) }),
    ...(late === undefined ? {} : { late: latestOf(late, than) }),
  };
}
