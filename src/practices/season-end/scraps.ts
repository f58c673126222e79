/**
 * What a kitchen gives a bin, and the browns it asks for.
 */
import { BROWNS_TO_GREENS, feedstockById } from '../../handbook/feedstocks.ts';
import type { Span } from '../../handbook/shapes/row.ts';

/** Grams of kitchen scraps a person a day (compost:S50). */
export const SCRAPS_G_A_DAY: Span = { low: 90, high: 400 };

const G_PER_LITRE_OF_WATER = 1000;

/** Litres of scraps a person a day: the middle of the published band by their weight as piled, to a tenth. House default. */
export function scrapsLitresADay(): number {
  const gramsALitre = feedstockById('kitchen_vegetable_scraps').densityKgPerM3?.usual ?? G_PER_LITRE_OF_WATER;
  const grams = (SCRAPS_G_A_DAY.low + SCRAPS_G_A_DAY.high) / 2;
  return Math.round((grams / gramsALitre) * 10) / 10;
}

/** Litres as a bucket measures them: rounded up to ten. */
export function inTens(litres: number): number {
  return Math.ceil(litres / 10) * 10;
}

/** Litres of scraps of so many people in so many days, and of the browns that go with them. */
export function scrapsOf(people: number, days: number): { scraps: number; browns: number } {
  const scraps = inTens(people * days * scrapsLitresADay());
  return { scraps, browns: scraps * BROWNS_TO_GREENS };
}

/** Share of their loose volume that leaves keep once they are trodden down, from the two densities of the handbook. */
export function troddenShare(): number {
  const loose = feedstockById('leaves_dry_loose').densityKgPerM3?.usual ?? 1;
  return loose / (feedstockById('leaves_compacted_moist').densityKgPerM3?.usual ?? loose);
}
