import { describe, expect, it } from 'vitest';
import {
  CM_PER_INCH,
  celsius,
  fahrenheit,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  LITRES_PER_CUBIC_FOOT,
  LITRES_PER_CUBIC_YARD,
  LITRES_PER_GALLON,
  LITRES_PER_QUART,
  M_PER_FOOT,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
} from '../../src/measures/units.ts';

/** Conversion factors, exact unless noted: NIST Handbook 44, Appendix C (yard and pound agreement of 1959). From memory. */
describe('the international yard and pound', () => {
  it('makes an inch 25.4 mm and a foot 0.3048 m', () => {
    expect(MM_PER_INCH).toBe(25.4);
    expect(CM_PER_INCH).toBe(2.54);
    expect(M_PER_FOOT).toBe(0.3048);
    expect(12 * MM_PER_INCH).toBeCloseTo(1000 * M_PER_FOOT, 10);
  });

  it('makes a pound 453.59237 g, sixteen ounces', () => {
    expect(GRAMS_PER_POUND).toBe(453.59237);
    expect(16 * GRAMS_PER_OUNCE).toBe(GRAMS_PER_POUND);
  });

  it('makes a cubic foot 28.316846592 L, a cubic yard 764.554857984 L', () => {
    expect(LITRES_PER_CUBIC_FOOT).toBeCloseTo((10 * M_PER_FOOT) ** 3, 12);
    expect(LITRES_PER_CUBIC_YARD).toBeCloseTo(764.554857984, 9);
  });

  it('makes a gallon 231 cubic inches, 3.785411784 L, four quarts', () => {
    expect(LITRES_PER_GALLON).toBeCloseTo((231 * CM_PER_INCH ** 3) / 1000, 12);
    expect(4 * LITRES_PER_QUART).toBe(LITRES_PER_GALLON);
  });

  it('makes a square foot 0.09290304 m²', () => {
    expect(M2_PER_SQUARE_FOOT).toBeCloseTo(0.09290304, 12);
  });
});

describe('temperatures', () => {
  // Fixed points of the scale; 28 and 24 °F are the freeze limits NOAA publishes beside 32.
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [50, 10],
    [28, -2.2222],
    [24, -4.4444],
  ])('%d °F is %d °C', (tempF, tempC) => {
    expect(celsius(tempF)).toBeCloseTo(tempC, 3);
    expect(fahrenheit(celsius(tempF))).toBeCloseTo(tempF, 10);
  });
});
