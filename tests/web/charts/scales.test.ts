import { describe, expect, test } from 'vitest';
import { dayScale, linearScale, monthStarts, roundTicks } from '../../../src/web/charts/scales.ts';

describe('a straight scale', () => {
  test('puts the ends on the ends and the middle in the middle, turned about where asked', () => {
    const y = linearScale({ from: -10, to: 30 }, { from: 100, to: 0 });
    expect([-10, 10, 30].map(y)).toEqual([100, 50, 0]);
  });

  test('puts a domain without length in the middle', () => {
    expect(linearScale({ from: 5, to: 5 }, { from: 0, to: 80 })(5)).toBe(40);
  });
});

describe('a scale of days', () => {
  test('gives every day the same width, over a leap day and the New Year', () => {
    const x = dayScale({ from: '2027-12-30', to: '2028-03-09' }, { from: 0, to: 700 });
    expect(['2027-12-30', '2027-12-31', '2028-01-01', '2028-02-28', '2028-02-29', '2028-03-01'].map(x)).toEqual([
      0, 10, 20, 600, 610, 620,
    ]);
  });

  test('takes a single day', () => {
    expect(dayScale({ from: '2027-05-12', to: '2027-05-12' }, { from: 0, to: 10 })('2027-05-12')).toBe(5);
  });
});

test.each([
  [{ from: -12, to: 31 }, 4, [-10, 0, 10, 20, 30]],
  [{ from: 0, to: 1 }, 4, [0, 0.5, 1]],
  [{ from: 0, to: 0.9 }, 4, [0, 0.2, 0.4, 0.6, 0.8]],
  [{ from: 3, to: 3 }, 4, []],
])('round amounts in %o, about %i of them', (domain, wanted, ticks) => {
  expect(roundTicks(domain, wanted)).toEqual(ticks);
});

test('months are marked on their first days', () => {
  expect(monthStarts('2027-11-30', '2028-03-01')).toEqual(['2027-12-01', '2028-01-01', '2028-02-01', '2028-03-01']);
  expect(monthStarts('2027-04-01', '2027-04-30')).toEqual(['2027-04-01']);
  expect(monthStarts('2027-04-02', '2027-04-30')).toEqual([]);
});
