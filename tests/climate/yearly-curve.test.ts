import { expect, it } from 'vitest';
import { courseAt, courseOf, midMonthIndices } from '../../src/climate/yearly-curve.ts';

const MONTHLY = [-9, -7, -2, 3, 8, 14, 18, 17, 13, 6, 0, -6];

it('passes through each monthly mean in the middle of its month', () => {
  expect(courseAt(MONTHLY, '01-01', 16)).toBeCloseTo(-9, 9);
  expect(courseAt(MONTHLY, '01-01', 197)).toBeCloseTo(18, 9);
  expect(courseAt(MONTHLY, '01-01', 350)).toBeCloseTo(-6, 9);
});

it('runs straight between the middles of months', () => {
  // 31 days from 16 December to 16 January, from −6 to −9.
  expect(courseAt(MONTHLY, '01-01', 365)).toBeCloseTo(-6 - (3 * 15) / 31, 9);
  expect(courseAt(MONTHLY, '01-01', 1)).toBeCloseTo(-6 - (3 * 16) / 31, 9);
});

it('has 365 days without a jump, at New Year neither', () => {
  const course = courseOf(MONTHLY, '01-01');
  expect(course).toHaveLength(365);
  course.forEach((tempC, i) => {
    expect(Math.abs(tempC - (course[(i + 1) % 365] ?? Number.NaN))).toBeLessThan(0.3);
  });
});

it('is the same on the same calendar day in a southern season', () => {
  expect(courseAt(MONTHLY, '07-01', 185)).toBe(courseAt(MONTHLY, '01-01', 1));
  expect(courseAt(MONTHLY, '07-01', 1)).toBe(courseAt(MONTHLY, '01-01', 182));
});

it('knows the season index of each month’s middle', () => {
  expect(midMonthIndices('01-01').slice(0, 3)).toEqual([16, 45.5, 75]);
  expect(midMonthIndices('07-01').slice(5, 8)).toEqual([350.5, 16, 47]);
});
