import { describe, expect, it } from 'vitest';
import { dailySpreadC, expectedAbove, expectedBetween } from '../../src/climate/daily-spread.ts';

describe('the expected excess of a scattered temperature', () => {
  it('is the plain excess where nothing falls below the base', () => {
    expect(expectedAbove(30, 4, 5)).toBeCloseTo(25, 6);
  });

  it('is nothing far below the base', () => {
    expect(expectedAbove(-30, 4, 5)).toBeCloseTo(0, 6);
  });

  it('is a mean over the scatter: summed over a fine normal sample it is the same', () => {
    const [mean, spread, base] = [3, 5, 4.4];
    let [sum, weights] = [0, 0];
    for (let z = -6; z <= 6; z += 0.001) {
      const weight = Math.exp((-z * z) / 2);
      sum += weight * Math.max(0, mean + z * spread - base);
      weights += weight;
    }
    expect(expectedAbove(mean, spread, base)).toBeCloseTo(sum / weights, 4);
  });

  it('stops at the upper limit', () => {
    expect(expectedBetween(60, 4, 10, 30)).toBeCloseTo(20, 6);
    expect(expectedBetween(15, 4, 10)).toBe(expectedAbove(15, 4, 10));
  });
});

it('scatters most in midwinter and least in midsummer, by season index in either half of the world', () => {
  const [midwinter, midsummer] = [dailySpreadC(16), dailySpreadC(228)];
  expect(midwinter.mean).toBeCloseTo(6.3, 6);
  expect(midsummer.mean).toBeCloseTo(3.2, 6);
  expect(midwinter.minimum).toBeGreaterThan(2 * midsummer.minimum);
});
