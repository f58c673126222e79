import { describe, expect, it } from 'vitest';
import { anchoredIndex, levelIndex } from '../../src/climate/freeze-curve.ts';

/** Half a degree a day: up from −10 in mid-January … a plain triangle of monthly means, warmest 20 in mid-July. */
const MONTHLY = [-10, -5, 0, 5, 10, 15, 20, 15, 10, 5, 0, -5];
const course = { tminC: MONTHLY, turn: '01-01' } as const;
const mirrored = { tminC: [...MONTHLY.slice(6), ...MONTHLY.slice(0, 6)], turn: '07-01' } as const;

describe('a date anchored to a known one', () => {
  it('is the known one when nothing changes', () => {
    expect(anchoredIndex(course, 'last-spring', 123, 0)).toBe(123);
  });

  it('is earlier in spring and later in autumn for a colder limit', () => {
    // 5 °C in the 30.5 days from mid-April (105.5) to mid-May (136): 2 °C are 12.2 days.
    expect(anchoredIndex(course, 'last-spring', 136, -2)).toBeCloseTo(123.8, 1);
    // 5 °C in the 30.5 days from mid-September (258.5) to mid-October (289).
    expect(anchoredIndex(course, 'first-autumn', 258.5, -2)).toBeCloseTo(270.7, 1);
  });

  it('is later in spring and earlier in autumn for a colder place', () => {
    expect(anchoredIndex(course, 'last-spring', 105.5, 2)).toBeCloseTo(117.7, 1);
    expect(anchoredIndex(course, 'first-autumn', 289, 2)).toBeCloseTo(276.8, 1);
  });

  it('is nowhere on a side of the year that never gets so cold or so warm', () => {
    expect(anchoredIndex(course, 'last-spring', 120, -40)).toBeUndefined();
    expect(anchoredIndex(course, 'first-autumn', 280, 40)).toBeUndefined();
  });

  it('lies as many days into a southern season', () => {
    const north = anchoredIndex(course, 'last-spring', 120, -3) ?? Number.NaN;
    const south = anchoredIndex(mirrored, 'last-spring', 120, -3) ?? Number.NaN;
    // Months south of the equator have other lengths half a year on, so a day or two may go.
    expect(Math.abs(north - south)).toBeLessThan(2);
  });
});

describe('a date read off the level of other places', () => {
  it('is where the mean minimum passes 3.4 + 0.1 of the warmest month in spring, 2.2 + 0.2 in autumn', () => {
    // Warmest 20: levels 5.4 and 6.2. From mid-April at 5 °C 0.4/5 of 30.5 days; from mid-September at 10 °C 3.8/5.
    expect(levelIndex(course, 'last-spring')).toBeCloseTo(105.5 + (30.5 * 0.4) / 5, 1);
    expect(levelIndex(course, 'first-autumn')).toBeCloseTo(258.5 + (30.5 * 3.8) / 5, 1);
  });

  it('is nowhere where no month is warm, or every month is', () => {
    expect(levelIndex({ ...course, tminC: Array(12).fill(1) }, 'last-spring')).toBeUndefined();
    expect(levelIndex({ ...course, tminC: MONTHLY.map((tempC) => tempC + 30) }, 'last-spring')).toBeUndefined();
  });

  it('is nowhere when it would fall before the season starts', () => {
    // Coldest in December at 3 °C, above the level by mid-January.
    const mild = [7, 8, 9, 10, 12, 14, 16, 15, 12, 9, 6, 3];
    expect(levelIndex({ ...course, tminC: mild }, 'last-spring')).toBeUndefined();
  });
});
