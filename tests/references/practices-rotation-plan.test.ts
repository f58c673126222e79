/**
 * The rotation planner held against the reference tables: how long a family keeps out of its bed.
 */
import { describe, expect, test } from 'vitest';
import { vegetableById, vegetables } from '../../src/handbook/vegetables.ts';
import { isPermanent } from '../../src/practices/bed-timeline.ts';
import { brokenRules } from '../../src/practices/rotation-plan/broken.ts';
import { gardenProblem } from '../../src/practices/rotation-plan/garden-problem.ts';
import { isHard } from '../../src/practices/rotation-plan/looked-at.ts';
import { frostDates, garden, inputOf, setOut, sown } from '../practices/gardens.ts';
import { carried, placed, planBed, rotationProblem } from '../practices/rotation-plan/problems.ts';

/** Whether a crop may follow another of its family so many years on. */
function mayFollow(before: string, next: string, years: number): boolean {
  const beds = [planBed('a', { carried: carried({ [2027 - years]: before }), knownSince: 2000 })];
  return !brokenRules(rotationProblem({ beds }), [placed('a', next)]).some(isHard);
}

describe('years before a family comes back to its bed', () => {
  test.each([
    // UConn, Having Problems Controlling Vegetable Crop Diseases – Try Rotation (veg:V12): nightshades 4 years.
    ['tomato', 'potato', 4],
    ['pepper', 'eggplant', 4],
    // The same: cucurbits, lettuce, beet and spinach 3 years.
    ['cucumber', 'winter-squash', 3],
    ['lettuce-leaf', 'endive', 3],
    ['beet', 'spinach', 3],
    // Nebraska Extension, 15 May 2013 (veg:V36): three to five years for any family; the short end is planned by.
    ['cabbage', 'kale', 3],
    ['onion-sets', 'garlic', 3],
    ['pea', 'snap-bean', 3],
    ['carrot', 'parsnip', 3],
  ])('%s, then %s: %d', (before, next, years) => {
    expect(mayFollow(before, next, years - 1)).toBe(false);
    expect(mayFollow(before, next, years)).toBe(true);
  });

  test('radish and turnip count with the cabbages (veg:V12), rape kin and all', () => {
    expect([mayFollow('radish', 'broccoli', 2), mayFollow('turnip', 'cauliflower', 2)]).toEqual([false, false]);
  });

  test('four straight years of tomato (MacNab & Zitter, veg:V13: leaf loss 3, 30, 74, 70 %) are caught each year', () => {
    const beds = [
      planBed('a', { carried: carried({ 2023: 'tomato', 2024: 'tomato', 2025: 'tomato', 2026: 'tomato' }) }),
    ];
    const broken = brokenRules(rotationProblem({ beds }), []);
    expect(broken.map(({ season, how }) => `${season} ${how}`)).toEqual(['2024 past', '2025 past', '2026 past']);
  });

  test('crops of one family wait alike, so that the model may hold a family by one figure', () => {
    const waits = new Map<string, Set<number>>();
    for (const crop of vegetables.filter((each) => !isPermanent(each))) {
      waits.set(crop.rotationGroup, (waits.get(crop.rotationGroup) ?? new Set()).add(crop.rotationYears));
    }
    expect([...waits].filter(([, years]) => years.size > 1)).toEqual([]);
  });

  test('hungry are those that take much nitrogen (University of Maryland, veg:V10)', () => {
    const hungry = ['tomato', 'potato', 'sweet-corn', 'broccoli', 'beet', 'onion-sets', 'garlic', 'okra'];
    const not = ['cabbage', 'kale', 'cucumber', 'carrot', 'leek', 'radish', 'pea'];
    expect(hungry.every((id) => vegetableById(id).nitrogen === 'high')).toBe(true);
    expect(not.some((id) => vegetableById(id).nitrogen === 'high')).toBe(false);
  });
});

describe('check values of the reference, in what is proposed and in what has been', () => {
  const today = '2026-11-25';

  /** Hard breaks of a garden, and of a crop proposed for 2027 in bed A. */
  function hardBreaks(parts: Parameters<typeof garden>[0], proposed?: string): string[] {
    const wishes = proposed === undefined ? [] : [{ cropId: proposed, amount: { beds: 1 } }];
    const input = inputOf(garden({ startedOn: today, ...parts, wishes }), frostDates('05-10', '10-01'), today);
    const problem = { ...gardenProblem(input, { years: 1, anew: false }), between: {} };
    const plan = proposed === undefined ? [] : [placed('a', proposed)];
    return brokenRules(problem, plan)
      .filter(isHard)
      .map(({ season, how, reason }) => `${season} ${how} ${reason.rule} ${reason.source}`);
  }
  const clubroot = [{ bedId: 'a', cropId: 'turnip', disease: 'clubroot', on: '2021-08-01' }];
  const turnip = sown('turnip', '2021-07-15', { harvested: '2021-09-30' });

  test('7: clubroot found, kale six years after turnip is refused: seven is the wait (veg:V12)', () => {
    expect(hardBreaks({ plantings: [turnip], diseases: clubroot }, 'kale')).toEqual([
      '2027 proposed rotation-plan.disease veg:V12',
    ]);
  });

  test('7, in what is planned and in the past: the same is caught', () => {
    const planned = setOut('kale', '2027-05-01');
    const grown = setOut('kale', '2025-05-01', { harvested: '2025-09-01' });
    expect(hardBreaks({ plantings: [turnip, planned], diseases: clubroot })).toEqual([
      '2027 settled rotation-plan.disease veg:V12',
    ]);
    expect(hardBreaks({ plantings: [turnip, grown], diseases: clubroot })).toEqual([
      '2025 past rotation-plan.disease veg:V12',
    ]);
  });

  test('8: no disease, broccoli three years after cabbage may go in, with the note of three to five years (veg:V36)', () => {
    const cabbage = setOut('cabbage', '2024-05-01', { harvested: '2024-09-01' });
    expect(hardBreaks({ plantings: [cabbage] }, 'broccoli')).toEqual([]);
    const beds = [planBed('a', { carried: carried({ 2024: 'cabbage' }) })];
    const told = brokenRules(rotationProblem({ beds }), [placed('a', 'broccoli')]);
    expect(told.map(({ reason }) => [reason.rule, reason.limit, reason.source])).toEqual([
      ['rotation-plan.longest-wait', 5, 'veg:V36'],
    ]);
  });

  test('9: white rot keeps every kind of onion out, with no end inside twenty years (veg:V30, veg:V33)', () => {
    const diseases = [{ bedId: 'a', cropId: 'garlic', disease: 'white rot', on: '2007-07-01' }];
    for (const cropId of ['garlic', 'onion-sets', 'leek'])
      expect(hardBreaks({ diseases }, cropId)[0]).toContain('rotation-plan.disease');
    expect(hardBreaks({ diseases }, 'carrot')).toEqual([]);
  });
});
