/**
 * How a squeezed handful of compost feels, and how a pile smells, as forms offer it.
 */
import type { MoistureFeel, PileSmell } from '../../../garden/garden.ts';

/** What a handful may feel like. */
export const FEELS: readonly { value: MoistureFeel; words: string }[] = [
  { value: 'dry', words: 'dry: nothing comes out, it falls apart' },
  { value: 'damp', words: 'damp: a drop or two' },
  { value: 'wet', words: 'wet: water runs out' },
];

/** What a pile may smell of. */
export const SMELLS: readonly { value: PileSmell; words: string }[] = [
  { value: 'earthy', words: 'earthy' },
  { value: 'ammonia', words: 'sharp, of ammonia' },
  { value: 'sour', words: 'sour or rotten' },
];
