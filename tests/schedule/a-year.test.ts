/**
 * A year in two invented gardens, lived day by day through the real practices: everything is done on its day.
 */
import { describe, expect, it } from 'vitest';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import type { Fact } from '../../src/garden/facts.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { projectGarden } from '../../src/garden/project.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { reasonSentence } from '../../src/schedule/explain.ts';
import type { Plan, PlannedTask } from '../../src/schedule/plan.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { NORTH_TODAY, northernFile, SOUTH_TODAY, southernFile } from '../steward/gardens.ts';

const DAYS_LIVED = 366;

interface Lived {
  today: Day;
  drafts: readonly TaskDraft[];
  plan: Plan;
  /** Tasks marked done in the evening of the day. */
  done: readonly PlannedTask[];
}

/** Every day of a year, each plan held against the one before. */
function year(file: GardenFile, start: Day): Lived[] {
  const ledger: LedgerEntry[] = [entryOf(1, start, { kind: 'garden-imported', file, prefer: 'reported' })];
  const lived: Lived[] = [];
  for (let n = 0; n < DAYS_LIVED; n += 1) {
    const today = addDays(start, n);
    const garden = projectGarden(ledger);
    if (garden?.climate.kind !== 'frost-dates') throw new Error('The garden has no frost dates.');
    const climate = climateFromFrostDates({ ...garden.place, ...garden.climate });
    const drafts = draftsOf({ garden, climate, today, until: addDays(today, 396) });
    const published = lived.at(-1)?.plan;
    const plan = makePlan({ garden, drafts, today, now: `${today}T06:00:00.000Z`, factsVersion: n, published });
    const done = plan.tasks.filter(({ state, day }) => day === today && (state === 'open' || state === 'lapsed'));
    for (const task of done) ledger.push(entryOf(ledger.length + 1, today, doneFact(task, today)));
    lived.push({ today, drafts, plan, done });
  }
  return lived;
}

function entryOf(entry: number, recordedOn: Day, fact: Fact): LedgerEntry {
  return { entry, recordedAt: `${recordedOn}T20:00:00.000Z`, recordedOn, by: 'gardener', fact };
}

function doneFact({ kind: taskKind, makes, ...task }: PlannedTask, on: Day): Fact {
  const { key, practice, title, job, subject, effortMinutes } = task;
  const done = { key, practice, taskKind, title, job, subject, effortMinutes, makes: [...makes] };
  return { kind: 'tasks-done', on, tasks: [done] };
}

describe.each([
  ['the north', northernFile(), NORTH_TODAY],
  ['the south', southernFile(), SOUTH_TODAY],
])('a year in %s with everything done on its day', (_, file, start) => {
  const lived = year(file, start);

  it('has work, and lets none of it lapse or clash', () => {
    expect(lived.flatMap(({ done }) => done).length).toBeGreaterThan(15);
    const late = lived.flatMap(({ today, plan }) =>
      plan.tasks.filter(({ state }) => state === 'lapsed').map(({ key }) => `${today} ${key}`),
    );
    expect(late).toEqual([]);
    expect(lived.flatMap(({ today, plan }) => plan.clashes.map(({ key, what }) => `${today} ${key} ${what}`))).toEqual(
      [],
    );
  });

  it('leaves every entry alone from one day to the next when nothing was done', () => {
    const stirred = lived.flatMap(({ today, plan }, index) => {
      const before = lived[index - 1];
      if (before === undefined || before.done.length > 0) return [];
      const known = new Map(before.plan.entries.map((entry) => [entry.lotId, JSON.stringify(entry)]));
      return plan.entries
        .filter((entry) => known.has(entry.lotId) && known.get(entry.lotId) !== JSON.stringify(entry))
        .map(({ lotId, day }) => `${today} ${lotId} ${day}`);
    });
    expect(stirred).toEqual([]);
  });

  it('has a sentence for every reason of every task and every change', () => {
    const reasons = lived.flatMap(({ drafts, plan }) => [
      ...drafts.flatMap((draft) => draft.reasons),
      ...plan.changes.flatMap(({ because }) => because),
    ]);
    const rules = new Map(reasons.map((reason) => [reason.rule, reason]));
    expect(rules.size).toBeGreaterThan(15);
    for (const reason of rules.values()) expect(reasonSentence(reason)).toMatch(/^\S.+[.?!]$/s);
  });
});
