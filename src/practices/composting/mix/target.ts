/**
 * How rich and how wet a pile is best begun.
 */
import type { Span } from '../../../handbook/shapes/row.ts';
import type { Band } from './portion.ts';

/** A target for a mix: the bands it should lie in and the figures aimed at inside them. */
export interface Target {
  carbonToNitrogen: Band;
  moisturePct: Band;
}

/**
 * A good beginning: 25 to 35 of carbon to one of nitrogen (compost:S14; compost:S13 ends at 30), aimed at 30
 * (compost:S3, compost:S5, compost:S9), and 50 to 60 percent water (compost:S13), watered to 55, because piles are best
 * begun between 55 and 60 (compost:S6) and dry out as they work.
 */
export const GOOD_START: Target = {
  carbonToNitrogen: { low: 25, usual: 30, high: 35 },
  moisturePct: { low: 50, usual: 55, high: 60 },
};

/** What still composts: 20 to 40 to one, 45 to 65 percent water (compost:S13). */
export const WILL_DO: { carbonToNitrogen: Span; moisturePct: Span } = {
  carbonToNitrogen: { low: 20, high: 40 },
  moisturePct: { low: 45, high: 65 },
};

/** How a figure stands to its bands. */
export type Standing = 'good' | 'will do' | 'too low' | 'too high';

/** A figure held against the good and the workable band. Both ends belong to their band. */
export function standingOf(value: number, good: Span, workable: Span): Standing {
  // What is aimed at exactly may land a hair outside.
  const inside = ({ low, high }: Span): boolean => value >= low - 1e-6 && value <= high + 1e-6;
  if (inside(good)) return 'good';
  if (inside(workable)) return 'will do';
  return value < workable.low ? 'too low' : 'too high';
}
