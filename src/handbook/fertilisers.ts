/**
 * Organic fertilisers by their analysis, for what compost and legumes leave short.
 */
import type { SourceId } from './shapes.ts';

/** One fertiliser: shares of nitrogen and phosphate (P2O5) by weight, 0–1. */
export interface Fertiliser {
  name: string;
  /** As it is printed on the bag, nitrogen-phosphate-potash in percent. */
  analysis: string;
  nitrogen: number;
  phosphate: number;
  source: SourceId;
}

/** Blood meal: nitrogen and nothing else, so that it suits soil rich in phosphorus too. */
export const bloodMeal: Fertiliser = {
  name: 'blood meal',
  analysis: '12-0-0',
  nitrogen: 0.12,
  phosphate: 0,
  source: 'veg:V10',
};

/** Cottonseed meal: a slower meal of plants, with some phosphate. */
export const cottonseedMeal: Fertiliser = {
  name: 'cottonseed meal',
  analysis: '6-2-1',
  nitrogen: 0.06,
  phosphate: 0.02,
  source: 'veg:V10',
};

/** Steamed bone meal: slow phosphate, of no use above pH 7 (from memory). */
export const boneMeal: Fertiliser = {
  name: 'steamed bone meal',
  analysis: '2-27-0',
  nitrogen: 0.02,
  phosphate: 0.27,
  source: 'veg:V24',
};

/**
 * Grams of a fertiliser a square metre for so many grams of nitrogen: need over the share of nitrogen, as veg:V10 and
 * veg:V11 reckon. Neither divides by how much of it becomes available in the first season.
 */
export function gramsForNitrogen(nitrogenGPerM2: number, { nitrogen }: Fertiliser): number {
  return nitrogenGPerM2 / nitrogen;
}
