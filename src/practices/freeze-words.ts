/**
 * Freezes named by how cold they are, so that two pages never call different days by one word.
 */
import type { FreezeLimitF } from '../climate/climate.ts';
import { quantity } from '../measures/quantity.ts';
import { celsius } from '../measures/units.ts';

/** "the first freeze of 24 °F", with its temperature marked; in the gardener's unit once it is read. */
export function firstFreezeOf(limitF: FreezeLimitF): string {
  return `the first freeze of ${quantity(Math.round(10 * celsius(limitF)) / 10, 'tempC')}`;
}
