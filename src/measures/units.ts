/**
 * Units of measure: SI inside, the gardener's at the edge.
 *
 * Conversion factors are exact by definition (international yard and pound, 1959) unless said otherwise.
 */

/** Millimetres in an inch. */
export const MM_PER_INCH = 25.4;
/** Centimetres in an inch. */
export const CM_PER_INCH = 2.54;
/** Metres in a foot of twelve inches. */
export const M_PER_FOOT = 0.3048;
/** Kilometres in a mile of 5280 feet. */
export const KM_PER_MILE = 1.609344;
/** Litres in a cubic foot. */
export const LITRES_PER_CUBIC_FOOT = 28.316846592;
/** Litres in a cubic yard of 27 cubic feet. */
export const LITRES_PER_CUBIC_YARD = 27 * LITRES_PER_CUBIC_FOOT;
/** Litres in a US gallon of 231 cubic inches. */
export const LITRES_PER_GALLON = 3.785411784;
/** Litres in a US quart, four to the gallon. */
export const LITRES_PER_QUART = LITRES_PER_GALLON / 4;
/** Grams in an avoirdupois ounce. */
export const GRAMS_PER_OUNCE = 28.349523125;
/** Grams in a pound of sixteen ounces. */
export const GRAMS_PER_POUND = 16 * GRAMS_PER_OUNCE;
/** Square metres in a square foot. */
export const M2_PER_SQUARE_FOOT = M_PER_FOOT * M_PER_FOOT;

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
