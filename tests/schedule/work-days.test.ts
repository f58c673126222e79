import { describe, expect, it } from 'vitest';
import { bestDay, type Household, leastUnfitness, unfitness } from '../../src/schedule/work-days.ts';

/** Works on Saturdays (3, 10, 17, 24 April 2027) and is away from the 8th to the 12th. */
const saturdays: Household = { workDays: [6], away: [{ from: '2027-04-08', to: '2027-04-12' }] };

describe('unfitness', () => {
  it('sets a work day at home before another day at home, and both before a day away', () => {
    const of = (day: string) => unfitness(day, saturdays);
    expect([of('2027-04-03'), of('2027-04-05'), of('2027-04-09'), of('2027-04-10')]).toEqual([0, 1, 2, 2]);
  });

  it('counts the first and the last day of a time away as away', () => {
    expect([unfitness('2027-04-08', saturdays), unfitness('2027-04-12', saturdays)]).toEqual([2, 2]);
    expect([unfitness('2027-04-07', saturdays), unfitness('2027-04-13', saturdays)]).toEqual([1, 1]);
  });
});

describe('leastUnfitness', () => {
  it('is that of the best day of the span', () => {
    expect(leastUnfitness({ from: '2027-04-04', to: '2027-04-17' }, saturdays)).toBe(0);
    expect(leastUnfitness({ from: '2027-04-04', to: '2027-04-16' }, saturdays)).toBe(1);
    expect(leastUnfitness({ from: '2027-04-08', to: '2027-04-12' }, saturdays)).toBe(2);
  });
});

describe('bestDay', () => {
  const best = (from: string, preferred: string, to: string, household = saturdays, full: readonly string[] = []) =>
    bestDay({ from, to, preferred }, household, (day) => full.includes(day));

  it('is the work day nearest to the preferred day', () => {
    expect(best('2027-04-13', '2027-04-19', '2027-04-30')).toBe('2027-04-17');
    expect(best('2027-04-13', '2027-04-22', '2027-04-30')).toBe('2027-04-24');
  });

  it('passes over a work day on which nobody is at home', () => {
    expect(best('2027-04-05', '2027-04-10', '2027-04-20')).toBe('2027-04-17');
  });

  it('is the preferred day itself where the span holds no work day', () => {
    expect(best('2027-04-18', '2027-04-20', '2027-04-23')).toBe('2027-04-20');
  });

  it('is the day at home nearest to a preferred day away', () => {
    expect(best('2027-04-05', '2027-04-11', '2027-04-14')).toBe('2027-04-13');
  });

  it('is the preferred day where all the span is away', () => {
    expect(best('2027-04-08', '2027-04-10', '2027-04-12')).toBe('2027-04-10');
  });

  it('is the earlier of two days as near', () => {
    const twice: Household = { workDays: [3, 7], away: [] };
    expect(best('2027-04-12', '2027-04-16', '2027-04-25', twice)).toBe('2027-04-14');
  });

  it('leaves a full week for a work day in another, but not for a day that is none', () => {
    const once: Household = { workDays: [6], away: [] };
    expect(best('2027-04-17', '2027-04-17', '2027-04-30', once, ['2027-04-17'])).toBe('2027-04-24');
    expect(best('2027-04-17', '2027-04-17', '2027-04-23', once, ['2027-04-17'])).toBe('2027-04-17');
  });

  it('finds the work day across New Year and on 29 February', () => {
    const every: Household = { workDays: [2], away: [] };
    expect(best('2027-12-29', '2027-12-30', '2028-01-08', every)).toBe('2028-01-04');
    expect(best('2028-02-24', '2028-02-28', '2028-03-06', every)).toBe('2028-02-29');
  });
});
