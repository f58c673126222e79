/**
 * A line of the nitrogen ledger and its figures.
 */
import { tenth } from '../../measures/tenth.ts';
import type { Reason } from '../draft.ts';

/** Nitrogen over a season on the whole bed, g/m²: the middle of what is known, and the ends of it. */
export interface Grams {
  low: number;
  usual: number;
  high: number;
}

/** One line of a ledger: what a crop wants, or what something gives (below zero where it takes). */
export interface LedgerLine {
  side: 'want' | 'give';
  /** What it is, in words: "tomato", "soil", "compost of this season". */
  of: string;
  gPerM2: Grams;
  /** The arithmetic and where its figures come from. */
  reason: Reason;
}

/** One figure that is all that is known. */
export function certain(gPerM2: number): Grams {
  return { low: gPerM2, usual: gPerM2, high: gPerM2 };
}

/** The middle of a span stands for it. */
export function between(low: number, high: number): Grams {
  return { low, usual: (low + high) / 2, high };
}

/** All of a figure multiplied. */
export function times({ low, usual, high }: Grams, by: number): Grams {
  return { low: low * by, usual: usual * by, high: high * by };
}

/** Two figures added up. */
export function plus(one: Grams, other: Grams): Grams {
  return { low: one.low + other.low, usual: one.usual + other.usual, high: one.high + other.high };
}

/** The three figures as a reason holds them. */
export function seen({ low, usual, high }: Grams): { lowGPerM2: number; usualGPerM2: number; highGPerM2: number } {
  return { lowGPerM2: tenth(low), usualGPerM2: tenth(usual), highGPerM2: tenth(high) };
}
