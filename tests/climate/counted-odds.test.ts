import { expect, it } from 'vitest';
import { countedOdds } from '../../src/climate/counted-odds.ts';
import { dayOfIndex } from '../../src/climate/season.ts';

const dayAt = (index: number) => dayOfIndex('01-01', 2027, index);

it('puts nine years’ deciles on their first, fifth and last day', () => {
  expect(countedOdds([101, 102, 103, 104, 105, 106, 107, 108, 109], 9, dayAt)).toEqual({
    early: '2027-04-11',
    median: '2027-04-15',
    late: '2027-04-19',
    shareOfYears: 1,
    years: 9,
  });
});

it('moves every day later for years without the event, and gives none to a share it never reaches', () => {
  // Nine of twelve years: one in ten is 0.133 of the nine, half is 0.667, nine in ten is more than all.
  expect(countedOdds([101, 102, 103, 104, 105, 106, 107, 108, 109], 12, dayAt)).toEqual({
    early: '2027-04-11',
    median: '2027-04-17',
    shareOfYears: 0.75,
    years: 12,
  });
});

it('has no day at all where the event never came, or no year could tell', () => {
  expect(countedOdds([], 9, dayAt)).toEqual({ shareOfYears: 0, years: 9 });
  expect(countedOdds([], 0, dayAt)).toEqual({ shareOfYears: 0, years: 0 });
});
