import { describe, expect, it } from 'vitest';
import {
  deviationOf,
  meanOf,
  normalDensity,
  normalQuantile,
  normalShareBelow,
  quantileType6,
  quantileType7,
} from '../../src/climate/quantiles.ts';

describe('quantiles of a sample', () => {
  it('puts the first of nine values at one tenth by plotting position (n + 1)·p', () => {
    const nine = [1, 2, 3, 4, 5, 6, 7, 8, 9];
    expect(quantileType6(nine, 0.1)).toBeCloseTo(1, 9);
    expect(quantileType6(nine, 0.5)).toBeCloseTo(5, 9);
    expect(quantileType6(nine, 0.9)).toBeCloseTo(9, 9);
  });

  it('puts the first value at nought by type 7', () => {
    expect(quantileType7([10, 20, 30], 0)).toBe(10);
    expect(quantileType7([10, 20, 30], 0.25)).toBe(15);
    expect(quantileType7([10, 20, 30], 1)).toBe(30);
  });

  it('gives wider tails by plotting position than by type 7', () => {
    const sample = [3, 8, 11, 20, 31, 33];
    expect(quantileType6(sample, 0.2)).toBeLessThan(quantileType7(sample, 0.2));
    expect(quantileType6(sample, 0.8)).toBeGreaterThan(quantileType7(sample, 0.8));
  });

  it('stays inside a small sample', () => {
    expect(quantileType6([4, 6], 0.01)).toBe(4);
    expect(quantileType6([4, 6], 0.99)).toBe(6);
    expect(quantileType6([4], 0.5)).toBe(4);
  });

  it('refuses an empty sample', () => {
    expect(() => quantileType6([], 0.5)).toThrow('at least one value');
  });
});

it('takes mean and standard deviation with n − 1', () => {
  expect(meanOf([2, 4, 9])).toBe(5);
  expect(deviationOf([2, 4, 9])).toBeCloseTo(Math.sqrt(13), 12);
});

describe('the normal curve', () => {
  // Values of any printed table of the standard normal distribution.
  it.each([
    [0, 0.5],
    [1, 0.8413447],
    [-1, 0.1586553],
    [1.2815516, 0.9],
    [1.6448536, 0.95],
    [2.3263479, 0.99],
  ])('has z = %d at a share of %d', (z, share) => {
    expect(normalShareBelow(z)).toBeCloseTo(share, 6);
    expect(normalQuantile(share)).toBeCloseTo(z, 5);
  });

  it('is highest in the middle', () => {
    expect(normalDensity(0)).toBeCloseTo(0.3989423, 7);
    expect(normalDensity(1)).toBeCloseTo(0.2419707, 7);
  });
});
