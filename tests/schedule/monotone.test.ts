/**
 * Less work or more hours never makes weeks worse, for tasks that hang on nothing. That follows where all take the
 * same time, for then chains of moves find the best there is; where they do not, packing them is as hard as filling boxes,
 * and no quick rule keeps it always: it is asked of the three hundred cases of one fixed seed.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { type Placing, place } from '../../src/schedule/place.ts';
import { WeekLoad } from '../../src/schedule/week-load.ts';
import { runs } from '../runs.ts';
import { draft } from './drafts.ts';

const SEED = 20270503;
const MONDAYS = ['2027-04-05', '2027-12-13', '2028-02-14', '2027-03-01', '2027-10-18'] as const;

interface Alone {
  drafts: readonly TaskDraft[];
  placing: Placing;
}

/** Tasks of jobs of their own, four to ten, over five weeks. */
function alone(minutes: fc.Arbitrary<number>): fc.Arbitrary<Alone> {
  const task = fc.record({ from: fc.nat(28), length: fc.integer({ min: 0, max: 21 }), share: fc.nat(100), minutes });
  return fc
    .record({
      monday: fc.constantFrom(...MONDAYS),
      tasks: fc.array(task, { minLength: 4, maxLength: 10 }),
      hoursPerWeek: fc.integer({ min: 1, max: 3 }),
    })
    .map(({ monday, tasks, hoursPerWeek }) => ({
      drafts: tasks.map(({ from, length, share, minutes: effortMinutes }, at) => {
        const on = (days: number) => addDays(monday, from + days);
        const days = [on(0), on(Math.round((length * share) / 100)), on(length)] as const;
        return draft(`job${at}`, `b${at}`, days, { effortMinutes });
      }),
      placing: { today: addDays(monday, -1), workDays: [3, 6], hoursPerWeek, away: [], pins: {}, done: [] },
    }));
}

function overMinutes(drafts: readonly TaskDraft[], placing: Placing): number {
  const load = new WeekLoad([], placing);
  for (const { draft: task, day } of place(drafts, placing).placed) load.add(day, task);
  return load.overMinutes;
}

/** By how many minutes the weeks of a case are worse without its first task, and with an hour more. */
function worse({ drafts, placing }: Alone): number[] {
  const now = overMinutes(drafts, placing);
  const fewer = overMinutes(drafts.slice(1), placing);
  const longer = overMinutes(drafts, { ...placing, hoursPerWeek: placing.hoursPerWeek + 1 });
  return [fewer - now, longer - now];
}

describe('weeks of tasks that hang on nothing', () => {
  it('are never worse with less work or more hours, where all tasks take an hour', () => {
    fc.assert(
      fc.property(alone(fc.constant(60)), (drawn) => {
        expect(Math.max(...worse(drawn))).toBeLessThanOrEqual(0);
      }),
      { seed: SEED, numRuns: runs(60, 500) },
    );
  });

  it('are not worse in three hundred fixed cases where tasks take different times', () => {
    const drawn = fc.sample(alone(fc.integer({ min: 3, max: 24 }).map((fives) => 5 * fives)), {
      seed: SEED,
      numRuns: 300,
    });
    const failures = drawn.flatMap(worse).filter((minutes) => minutes > 0);
    expect(failures).toEqual([]);
  });

  it('hold every task once', () => {
    fc.assert(
      fc.property(alone(fc.integer({ min: 5, max: 300 })), ({ drafts, placing }) => {
        const { placed, clashes } = place(drafts, placing);
        expect(placed.map(({ draft: { key } }) => key).sort()).toEqual(drafts.map(({ key }) => key).sort());
        expect(clashes).toEqual([]);
        for (const {
          draft: { window },
          day,
        } of placed)
          expect(day >= window.earliest && day <= window.latest).toBe(true);
      }),
      { seed: SEED, numRuns: runs(40, 400) },
    );
  });
});
