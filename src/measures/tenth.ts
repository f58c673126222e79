/**
 * Figures as they are shown where tenths are enough.
 */

/** A figure to the nearest tenth; never a zero with a minus before it. */
export function tenth(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}
