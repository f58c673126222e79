/**
 * Organic fertilisers by their analysis, for what compost and legumes leave short. Only what was once alive is in it.
 */
import type { SourceId } from './shapes/row.ts';

/** One fertiliser: shares of nitrogen and phosphate (P2O5) by weight, 0–1. */
export interface Fertiliser {
  id: string;
  name: string;
  /** What it is made of. */
  madeOf: 'animals' | 'plants' | 'manure';
  /** As it is printed on the bag, nitrogen-phosphate-potash in percent. */
  analysis: string;
  nitrogen: number;
  phosphate: number;
  /** How soon its nitrogen comes. */
  speed: 'fast' | 'medium' | 'slow';
  source: SourceId | 'from memory';
}

/** Blood meal: nitrogen and nothing else, so that it suits soil rich in phosphorus too. */
export const bloodMeal: Fertiliser = {
  id: 'blood_meal',
  name: 'blood meal',
  madeOf: 'animals',
  analysis: '12-0-0',
  nitrogen: 0.12,
  phosphate: 0,
  speed: 'fast',
  source: 'veg:V10',
};

/** Cottonseed meal: a slower meal of plants, with some phosphate. */
export const cottonseedMeal: Fertiliser = {
  id: 'cottonseed_meal',
  name: 'cottonseed meal',
  madeOf: 'plants',
  analysis: '6-2-1',
  nitrogen: 0.06,
  phosphate: 0.02,
  speed: 'medium',
  source: 'veg:V10',
};

/** Steamed bone meal: slow phosphate, of no use above pH 7 (from memory). */
export const boneMeal: Fertiliser = {
  id: 'bone_meal',
  name: 'steamed bone meal',
  madeOf: 'animals',
  analysis: '2-27-0',
  nitrogen: 0.02,
  phosphate: 0.27,
  speed: 'slow',
  source: 'veg:V24',
};

/** What nitrogen may be brought with, the fastest first. Speeds are from memory but for blood, fish and cottonseed (veg:V10). */
export const nitrogenFertilisers: readonly Fertiliser[] = [
  bloodMeal,
  {
    id: 'hoof_and_horn_meal',
    name: 'hoof and horn meal',
    madeOf: 'animals',
    analysis: '14-0-0',
    nitrogen: 0.14,
    phosphate: 0,
    speed: 'medium',
    source: 'veg:V24',
  },
  {
    id: 'feather_meal',
    name: 'feather meal',
    madeOf: 'animals',
    analysis: '12-0-0',
    nitrogen: 0.12,
    phosphate: 0,
    speed: 'medium',
    source: 'from memory',
  },
  {
    id: 'fish_meal',
    name: 'fish meal',
    madeOf: 'animals',
    analysis: '9-7-0',
    nitrogen: 0.09,
    phosphate: 0.07,
    speed: 'fast',
    source: 'veg:V24',
  },
  cottonseedMeal,
  {
    id: 'poultry_pellets',
    name: 'pellets of composted poultry manure',
    madeOf: 'manure',
    analysis: '4-3-2',
    nitrogen: 0.04,
    phosphate: 0.03,
    speed: 'medium',
    source: 'from memory',
  },
  {
    id: 'alfalfa_meal',
    name: 'alfalfa meal',
    madeOf: 'plants',
    analysis: '2.5-0.5-2.5',
    nitrogen: 0.025,
    phosphate: 0.005,
    speed: 'slow',
    source: 'from memory',
  },
];

/** Every fertiliser of the handbook. */
export const fertilisers: readonly Fertiliser[] = [...nitrogenFertilisers, boneMeal];

/**
 * The fertiliser with an id.
 *
 * @throws {RangeError} when the handbook knows none
 */
export function fertiliserById(id: string): Fertiliser {
  const found = fertilisers.find((each) => each.id === id);
  if (found === undefined) throw new RangeError(`"${id}" is no fertiliser of the handbook.`);
  return found;
}

/** Percent of nitrogen in a fertiliser above which no larger share of it is released. From memory, after Gale and others 2006. */
const RELEASE_LEVELS_PERCENT = 6;

/**
 * The share of a fertiliser's nitrogen that a crop finds within the season, 0–1: 15 times its percent of nitrogen less 15,
 * in percent, and level at 75 from six percent up. From memory, after Gale and others 2006; for fresh meals, not for
 * compost.
 */
export function releasedShare({ nitrogen }: Pick<Fertiliser, 'nitrogen'>): number {
  return (15 * Math.min(100 * nitrogen, RELEASE_LEVELS_PERCENT) - 15) / 100;
}

/** Grams in a dry cup of 8 fl oz of a meal: about a third of a pound (veg:V59). */
export const GRAMS_A_CUP_OF_MEAL = 150;

/**
 * Grams of a fertiliser a square metre for so many grams of nitrogen: need over the share of nitrogen, as veg:V10 and
 * veg:V11 reckon. Neither divides by how much of it becomes available in the first season.
 */
export function gramsForNitrogen(nitrogenGPerM2: number, { nitrogen }: Fertiliser): number {
  return nitrogenGPerM2 / nitrogen;
}
