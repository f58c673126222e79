import { describe, expect, it } from 'vitest';
import type { FreezeDates } from '../../src/climate/climate.ts';
import { chanceOfFreezeOnOrAfter, freezeDay, freezeOdds } from '../../src/climate/freeze.ts';
import { climateWithFreezes } from './invented.ts';

const NONE: FreezeDates = { kind: 'none' };
const spring = { event: 'last-spring', limitF: 32, season: 2027 } as const;
const autumn = { event: 'first-autumn', limitF: 32, season: 2027 } as const;

/** Nine seasons, index 101 to 109 and 281 to 289: deciles by plotting position are whole days. */
const nine = [1, 2, 3, 4, 5, 6, 7, 8, 9];
const counted = climateWithFreezes(
  { kind: 'counted', indices: nine.map((n) => 100 + n), seasonsUsed: 9 },
  { kind: 'counted', indices: nine.map((n) => 280 + n), seasonsUsed: 9 },
);

describe('a freeze date counted over seasons', () => {
  it('is late in spring and early in autumn when the chance is to be small', () => {
    expect(freezeDay(counted, { ...spring, chancePercent: 10 })).toBe('2027-04-19');
    expect(freezeDay(counted, { ...spring, chancePercent: 90 })).toBe('2027-04-11');
    expect(freezeDay(counted, { ...autumn, chancePercent: 10 })).toBe('2027-10-08');
    expect(freezeDay(counted, { ...autumn, chancePercent: 90 })).toBe('2027-10-16');
  });

  it('is the same in any season, by month and day', () => {
    expect(freezeDay(counted, { ...spring, season: 2028, chancePercent: 50 })).toBe('2028-04-15');
    expect(freezeDay(counted, { ...spring, season: 2031, chancePercent: 50 })).toBe('2031-04-15');
  });

  it('runs from early to late by the calendar in its odds', () => {
    expect(freezeOdds(counted, spring)).toEqual({
      early: '2027-04-11',
      median: '2027-04-15',
      late: '2027-04-19',
      shareOfYears: 1,
      years: 9,
    });
    expect(freezeOdds(counted, autumn)).toMatchObject({ early: '2027-10-08', late: '2027-10-16' });
  });
});

describe('seasons without the freeze', () => {
  const half = { kind: 'counted', indices: nine.map((n) => 100 + n), seasonsUsed: 18 } as const;
  const seldom = climateWithFreezes(half, { ...half, indices: nine.map((n) => 280 + n) });

  it('bring the late spring date forward: one season in ten is one freeze season in five', () => {
    // h = (9 + 1)·0.8 = 8: the eighth of the nine.
    expect(freezeDay(seldom, { ...spring, chancePercent: 10 })).toBe('2027-04-18');
  });

  it('put the early autumn date back', () => {
    expect(freezeDay(seldom, { ...autumn, chancePercent: 10 })).toBe('2027-10-09');
  });

  it('leave no date for a chance as high as the share of freeze seasons', () => {
    expect(freezeDay(seldom, { ...spring, chancePercent: 50 })).toBeUndefined();
    expect(freezeDay(seldom, { ...autumn, chancePercent: 90 })).toBeUndefined();
    expect(freezeOdds(seldom, autumn)).toEqual({ early: '2027-10-09', shareOfYears: 0.5, years: 18 });
    expect(freezeOdds(seldom, spring)).toEqual({ late: '2027-04-18', shareOfYears: 0.5, years: 18 });
  });
});

describe('a stated freeze date', () => {
  const stated = climateWithFreezes(
    { kind: 'stated', median: 120, spreadBeforeDays: 10, spreadAfterDays: 5 },
    { kind: 'stated', median: 280, spreadBeforeDays: 8, spreadAfterDays: 12 },
  );

  it('is spread by each side for itself: 1.2816 standard deviations at one year in ten', () => {
    expect(freezeDay(stated, { ...spring, chancePercent: 50 })).toBe('2027-04-30');
    expect(freezeDay(stated, { ...spring, chancePercent: 10 })).toBe('2027-05-06');
    expect(freezeDay(stated, { ...spring, chancePercent: 90 })).toBe('2027-04-17');
    expect(freezeDay(stated, { ...autumn, chancePercent: 10 })).toBe('2027-09-27');
    expect(freezeDay(stated, { ...autumn, chancePercent: 90 })).toBe('2027-10-22');
  });

  it('comes from no counted years', () => {
    expect(freezeOdds(stated, spring)).toMatchObject({ shareOfYears: 1, years: 0 });
  });

  it('agrees with the chance of a freeze on that day', () => {
    for (const chancePercent of [5, 10, 30, 50, 70, 90]) {
      const index = freezeDay(stated, { ...spring, chancePercent });
      const chance = chanceOfFreezeOnOrAfter(stated, { limitF: 32, day: index ?? '' }) ?? Number.NaN;
      // A day is one tenth to one fifth of a standard deviation, so rounding moves the chance by up to 5 %.
      expect(Math.abs(chance - chancePercent / 100)).toBeLessThan(0.05);
    }
  });
});

describe('the chance of a freeze on or after a day', () => {
  it('is the share of seasons whose last freeze is not over', () => {
    const chanceOn = (day: string) => chanceOfFreezeOnOrAfter(counted, { limitF: 32, day });
    expect(chanceOn('2027-01-01')).toBe(1);
    expect(chanceOn('2027-04-15')).toBeCloseTo(5 / 9, 12);
    expect(chanceOn('2027-04-19')).toBeCloseTo(1 / 9, 12);
    expect(chanceOn('2027-04-20')).toBe(0);
    expect(chanceOn('2027-11-30')).toBe(0);
  });

  it('looks at the season of the day, in the south from July on', () => {
    const south = climateWithFreezes({ kind: 'counted', indices: [90, 100], seasonsUsed: 2 }, NONE, '07-01');
    expect(chanceOfFreezeOnOrAfter(south, { limitF: 32, day: '2027-09-30' })).toBe(0.5);
    expect(chanceOfFreezeOnOrAfter(south, { limitF: 32, day: '2027-06-30' })).toBe(0);
    expect(chanceOfFreezeOnOrAfter(south, { limitF: 32, day: '2027-07-01' })).toBe(1);
  });
});

describe('a place without freeze dates', () => {
  const none = climateWithFreezes(NONE, NONE);

  it('gives no day, no odds and no chance', () => {
    expect(freezeDay(none, { ...spring, chancePercent: 50 })).toBeUndefined();
    expect(freezeOdds(none, autumn)).toEqual({ shareOfYears: 0, years: 0 });
    expect(chanceOfFreezeOnOrAfter(none, { limitF: 32, day: '2027-04-01' })).toBeUndefined();
  });
});

it('lays southern dates in the southern year', () => {
  const south = climateWithFreezes(
    { kind: 'stated', median: 100, spreadBeforeDays: 10, spreadAfterDays: 10 },
    { kind: 'stated', median: 310, spreadBeforeDays: 10, spreadAfterDays: 10 },
    '07-01',
  );
  expect(freezeDay(south, { ...spring, chancePercent: 50 })).toBe('2027-10-08');
  expect(freezeDay(south, { ...spring, chancePercent: 10 })).toBe('2027-10-21');
  expect(freezeDay(south, { ...autumn, chancePercent: 50 })).toBe('2028-05-06');
  expect(freezeDay(south, { ...autumn, chancePercent: 10 })).toBe('2028-04-23');
});
