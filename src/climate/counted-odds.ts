/**
 * Odds of an event counted year by year.
 */
import type { Day } from '../measures/days.ts';
import type { Odds } from './odds.ts';
import { quantileType6 } from './quantiles.ts';

/**
 * Odds of an event that came at the given positions in some of the years looked at. Years without it are counted in:
 * a share of years that the event never reaches has no day.
 *
 * @param sorted positions of the event in the years that had it, ascending
 * @param years years looked at
 * @param dayAt the day at a position
 */
export function countedOdds(sorted: readonly number[], years: number, dayAt: (position: number) => Day): Odds {
  const dayBy = (share: number): Day | undefined => {
    if (sorted.length === 0) return undefined;
    const ofEventYears = (share * years) / sorted.length;
    return ofEventYears >= 1 ? undefined : dayAt(quantileType6(sorted, ofEventYears));
  };
  const [early, median, late] = [dayBy(0.1), dayBy(0.5), dayBy(0.9)];
  return {
    ...(early === undefined ? {} : { early }),
    ...(median === undefined ? {} : { median }),
    ...(late === undefined ? {} : { late }),
    shareOfYears: years === 0 ? 0 : sorted.length / years,
    years,
  };
}
