/**
 * What a smooth course of means leaves out: warm days in cold months.
 *
 * A curve through monthly means has no degree-days until its mean passes the base, though single warm days had some
 * before. So each day is taken as normally spread about its usual value, and its expected units are counted
 * (docs/climate.md).
 */
import { DAILY_SPREAD_C } from './fitted.ts';
import { normalDensity, normalShareBelow } from './quantiles.ts';
import { courseAt } from './yearly-curve.ts';

/**
 * Standard deviation of the day's mean, minimum and maximum at a season index, °C. A southern season is taken for a
 * northern one half a year later.
 */
export function dailySpreadC(index: number): { mean: number; minimum: number; maximum: number } {
  return {
    mean: courseAt(DAILY_SPREAD_C.mean, '01-01', index),
    minimum: courseAt(DAILY_SPREAD_C.minimum, '01-01', index),
    maximum: courseAt(DAILY_SPREAD_C.maximum, '01-01', index),
  };
}

/**
 * Expected excess over a base of a normally spread temperature: s·φ(z) + (m − base)·Φ(z) with z = (m − base)/s,
 * the mean of a normal curve cut off at the base.
 */
export function expectedAbove(meanC: number, spreadC: number, baseC: number): number {
  const z = (meanC - baseC) / spreadC;
  return spreadC * normalDensity(z) + (meanC - baseC) * normalShareBelow(z);
}

/** Expected excess over a base when warmth above an upper limit does not count. */
export function expectedBetween(meanC: number, spreadC: number, baseC: number, upperC?: number): number {
  const above = expectedAbove(meanC, spreadC, baseC);
  return upperC === undefined ? above : above - expectedAbove(meanC, spreadC, upperC);
}
