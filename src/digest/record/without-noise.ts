/**
 * Amounts as the record writes them.
 */

/** Figures an amount is written with: fewer than adding and converting in binary leave right, more than anybody measures. */
const FIGURES = 12;

/** An amount without what binary arithmetic leaves behind its last figure: 0.1 and 0.2 are 0.3. */
export function withoutNoise(amount: number): number {
  return Number(amount.toPrecision(FIGURES));
}
