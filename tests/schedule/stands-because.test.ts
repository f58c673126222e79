import { describe, expect, it } from 'vitest';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { standsBecause } from '../../src/schedule/stands-because.ts';
import { draft, garden, planOn } from './drafts.ts';

const today = '2027-05-01';
const everyDay = { workDays: [1, 2, 3, 4, 5, 6, 7] as const, hoursPerWeek: 10 };

/** Why the task of bed A stands where it does: its day, and the rules. */
function told(
  drafts: readonly TaskDraft[],
  household: {
    workDays: readonly (1 | 2 | 3 | 4 | 5 | 6 | 7)[];
    hoursPerWeek: number;
    away?: { from: string; to: string }[];
  },
  pins: Record<string, string> = {},
): string[] {
  const { away = [], ...hours } = household;
  const base = garden({ away, pins });
  const plan = planOn(today, drafts, { garden: { ...base, place: { ...base.place, ...hours } } });
  const task = plan.tasks.find(({ key }) => key === 'set/bed:a');
  if (task === undefined) return [];
  const because = standsBecause(task, { plan, household: { ...hours, away } });
  return [task.day, ...because.map(({ rule }) => rule)];
}

const set = (parts: Partial<TaskDraft> = {}) => draft('set', 'a', ['2027-06-01', '2027-06-03', '2027-07-10'], parts);

describe('why a task stands on its day', () => {
  it('is not asked where that is its best one', () => {
    expect(told([set()], everyDay)).toEqual(['2027-06-03']);
  });

  it('is the time away that its best day falls into', () => {
    expect(told([set()], { ...everyDay, away: [{ from: '2027-06-02', to: '2027-06-08' }] })).toEqual([
      '2027-06-01',
      'schedule.nobody-home',
    ]);
  });

  it('is that its best day is no day for the garden', () => {
    expect(told([set()], { workDays: [6, 7], hoursPerWeek: 10 })).toEqual(['2027-06-05', 'schedule.work-day']);
  });

  it('is what it waits for', () => {
    const first = draft('harden', 'a', ['2027-06-04', '2027-06-04', '2027-06-04']);
    expect(told([set({ after: [{ key: first.key, minDays: 7 }] }), first], everyDay)).toEqual([
      '2027-06-11',
      'schedule.waits',
    ]);
  });

  it('is the same work elsewhere', () => {
    const other = draft('set', 'b', ['2027-06-01', '2027-06-10', '2027-07-10']);
    expect(told([set(), other], everyDay)).toEqual(['2027-06-10', 'schedule.together']);
  });

  it('is the pin', () => {
    expect(told([set()], everyDay, { 'set/bed:a': '2027-06-20' })).toEqual(['2027-06-20', 'schedule.pinned']);
  });
});
