/**
 * Invented drafts and gardens, small enough to work out on a wall calendar.
 */

import type { DoneMark, Garden } from '../../src/garden/garden.ts';
import type { Day } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { type Placed, type Placing, place } from '../../src/schedule/place.ts';
import type { Entry, Plan, PlannedTask } from '../../src/schedule/plan.ts';
import { makePlan, type PlanInput } from '../../src/schedule/reconcile.ts';
import { NOTHING_TOLD } from '../garden/nothing-told.ts';

/** A draft's window as earliest, preferred and latest day; two days are both preferred and latest alike. */
export type Days = readonly [earliest: Day, preferred: Day, latest: Day];

/** A job on one bed: "sow/bed:a" unless a key is given. */
export function draft(job: string, bed: string, [earliest, preferred, latest]: Days, parts: Partial<TaskDraft> = {}) {
  const whole: TaskDraft = {
    key: `${job}/bed:${bed}`,
    practice: 'rotation',
    kind: job,
    job: { id: job, title: `${job} the beds` },
    subject: { type: 'bed', id: bed, name: `Bed ${bed}` },
    weight: 'work',
    title: `${job} bed ${bed}`,
    steps: [`Step of ${job}.`],
    cautions: [],
    supplies: [],
    window: { earliest, preferred, latest },
    ifMissed: 'still do',
    missedNote: 'Do it when you can.',
    effortMinutes: 20,
    needs: [],
    after: [],
    confidence: 'derived',
    reasons: [{ rule: 'cover-sow.planned', saw: { cover: 'oats', wanted: preferred, held: preferred }, source: OWN }],
    makes: [],
    ...parts,
  };
  return whole;
}

const OWN = "the garden's own plan" as const;

/** Places drafts in a household that works on Wednesdays and Saturdays and is never away, unless said otherwise. */
export function placedOn(today: Day, drafts: readonly TaskDraft[], parts: Partial<Placing> = {}) {
  const result = place(drafts, { today, workDays: [3, 6], hoursPerWeek: 4, away: [], pins: {}, done: [], ...parts });
  const byKey = new Map(result.placed.map((row) => [row.draft.key, row]));
  return {
    ...result,
    days: Object.fromEntries(result.placed.map(({ draft: { key }, day }) => [key, day])),
    of: (key: string): Placed | undefined => byKey.get(key),
  };
}

/** A garden with nothing in it but how its household works. */
export function garden(parts: Partial<Garden> = {}): Garden {
  return {
    id: 'hollow-lane',
    name: 'Hollow Lane',
    startedOn: '2027-01-01',
    place: {
      latitude: 45,
      longitude: -90,
      timeZone: 'America/Chicago',
      units: 'metric',
      workDays: [3, 6],
      hoursPerWeek: 4,
      soilTexture: 'loam',
      frostRisk: 30,
      bloomRiskPercent: 10,
      frostOffsetDays: 0,
      tempOffsetC: 0,
    },
    climate: { kind: 'nearest' },
    beds: [],
    plantings: [],
    stands: [],
    bins: [],
    piles: [],
    ...NOTHING_TOLD,
    ...parts,
  };
}

/** A done mark of a draft. */
export function doneMark(draft: TaskDraft, on: Day): DoneMark {
  const { key, practice, kind, title, job, subject, effortMinutes, onceMinutes } = draft;
  const once = onceMinutes === undefined ? {} : { onceMinutes };
  return { key, on, practice, kind, title, job, subject, effortMinutes, ...once, entry: 1 };
}

/** A plan made at noon of a day, unless said otherwise. */
export function planOn(today: Day, drafts: readonly TaskDraft[], parts: Partial<PlanInput> = {}): Plan {
  return makePlan({ garden: garden(), drafts, today, now: `${today}T12:00:00.000Z`, factsVersion: 1, ...parts });
}

/** The task with a key; a test that asks for one that is not there is wrong. */
export function taskIn(plan: Plan, key: string): PlannedTask {
  const task = plan.tasks.find((row) => row.key === key);
  if (task === undefined) throw new Error(`No task "${key}" in ${plan.tasks.map((row) => row.key).join(', ')}`);
  return task;
}

/** The entry that holds a task. */
export function entryWith(plan: Plan, key: string): Entry {
  const entry = plan.entries.find(({ keys }) => keys.includes(key));
  if (entry === undefined) throw new Error(`No entry with "${key}"`);
  return entry;
}
