import { expect, test } from 'vitest';
import { daysTaken, roughDays } from '../../../src/web/set-up/rough-days.ts';

const wordsOf = (today: string) => new Map(roughDays(today).map(({ day, words }) => [words, day]));

test('rough days reach back over the New Year and ahead over the next', () => {
  const january = wordsOf('2027-01-10');
  expect(january.get('late December 2026')).toBe('2026-12-25');
  expect(january.get('early November 2025')).toBe('2025-11-05');
  expect(january.get('late November 2027')).toBe('2027-11-25');
  expect(january.has('early December 2027')).toBe(false);
  expect(wordsOf('2027-12-31').get('middle of February 2028')).toBe('2028-02-15');
});

test('every rough day is a day, each once, oldest first, and one that a set-up takes', () => {
  for (const today of ['2027-01-01', '2028-02-29', '2027-12-31']) {
    const days = roughDays(today).map(({ day }) => day);
    expect(days).toEqual([...new Set(days)].sort());
    const { from, to } = daysTaken(today);
    expect(days.filter((day) => day < from || day > to)).toEqual([]);
  }
});
