/**
 * What a compost pile is built of.
 */
import type { Row } from './row.ts';

/** Figures of a feedstock whose origin is kept. */
export type FeedstockField =
  | 'carbonToNitrogen'
  | 'nitrogenPctDry'
  | 'moisturePctWet'
  | 'densityKgPerM3'
  | 'carbonPctDry';

/** A typical value with the range published for it. */
export interface Typical {
  usual: number;
  low?: number;
  high?: number;
}

/** One compost ingredient. Percentages of dry or wet mass as named; density as piled. */
export interface Feedstock extends Row<FeedstockField> {
  id: string;
  name: string;
  class: 'brown' | 'green' | 'other';
  /** Absent for materials left out of the carbon arithmetic (eggshells, ash). */
  carbonToNitrogen?: Typical;
  nitrogenPctDry?: Typical;
  moisturePctWet?: Typical;
  densityKgPerM3?: Typical;
  /** Carbon of dry matter used in the arithmetic, percent. */
  carbonPctDry?: number;
  manure: boolean;
  /** What could hurt or go wrong, in sentences of our own. */
  cautions: readonly string[];
}
