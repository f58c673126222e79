/**
 * Units of measure: SI inside, the gardener's at the edge.
 *
 * Conversion factors are exact by definition (international yard and pound, 1959) unless said otherwise.
 */

export const MM_PER_INCH = 25.4;
export const CM_PER_INCH = 2.54;
export const M_PER_FOOT = 0.3048;
export const LITRES_PER_CUBIC_FOOT = 28.316846592;
export const LITRES_PER_CUBIC_YARD = 27 * LITRES_PER_CUBIC_FOOT;
export const GRAMS_PER_OUNCE = 28.349523125;
export const GRAMS_PER_POUND = 16 * GRAMS_PER_OUNCE;
export const M2_PER_SQUARE_FOOT = M_PER_FOOT * M_PER_FOOT;
export const M2_PER_ACRE = 43_560 * M2_PER_SQUARE_FOOT;

/** Grams per square metre in one pound per acre, 0.11209. */
export const G_PER_M2_PER_LB_PER_ACRE = GRAMS_PER_POUND / M2_PER_ACRE;

/** Which units the gardener reads. */
export type UnitSystem = 'us' | 'metric';

/** Degrees Fahrenheit of a Celsius temperature. */
export function fahrenheit(tempC: number): number {
  return (tempC * 9) / 5 + 32;
}

/** Degrees Celsius of a Fahrenheit temperature. */
export function celsius(tempF: number): number {
  return ((tempF - 32) * 5) / 9;
}
