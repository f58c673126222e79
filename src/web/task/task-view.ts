/**
 * A task with what its page shows beside it.
 */

import type { Garden, SoilTextureId, Stand } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { standingEntries } from '../../garden/project.ts';
import type { TaskKey } from '../../practices/draft.ts';
import { tasksOf } from '../../schedule/entry-text.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { GardenView } from '../../steward/doings/steward.ts';

/** A task, the tasks of its calendar entry, and the ledger's last word on it. */
export interface TaskView {
  task: PlannedTask;
  /** All tasks of its calendar entry, itself included: the same work on other beds, and checks riding along. */
  lot: readonly PlannedTask[];
  /** What it waits for, where that is in the plan. */
  waitsFor: readonly { task: PlannedTask; minDays: number }[];
  /** The ledger entry that marked it done or skipped, while that stands. */
  settledBy: LedgerEntry | undefined;
}

/** The task with a key, or nothing when it is not in the plan. */
export function taskView({ plan, ledger }: Pick<GardenView, 'plan' | 'ledger'>, key: TaskKey): TaskView | undefined {
  const task = plan.tasks.find((row) => row.key === key);
  if (task === undefined) return undefined;
  const entry = plan.entries.find(({ keys }) => keys.includes(key));
  const waitsFor = task.after.flatMap(({ key: awaited, minDays }) => {
    const found = plan.tasks.find((row) => row.key === awaited);
    return found === undefined ? [] : [{ task: found, minDays }];
  });
  const settledBy = standingEntries(ledger).findLast(
    ({ fact }) =>
      ((fact.kind === 'tasks-done' || fact.kind === 'tasks-skipped') && fact.tasks.some((done) => done.key === key)) ||
      (fact.kind === 'stand-looked' && fact.task?.key === key),
  );
  return { task, lot: entry === undefined ? [task] : tasksOf(plan, entry), waitsFor, settledBy };
}

/** Whether a task can still be marked. */
export function isUnsettled({ state }: PlannedTask): boolean {
  return state === 'open' || state === 'lapsed';
}

/** The soil whose handful a task squeezes, where it is such a task. */
export function squeezedSoil({ makes }: Pick<PlannedTask, 'makes'>): SoilTextureId | undefined {
  return makes.flatMap((effect) => (effect.makes === 'soil-squeezed' ? [effect.soilTexture] : []))[0];
}

/** Whether a task looks at the young plants of a cover. */
export function looksAtStand({ kind }: Pick<PlannedTask, 'kind'>): boolean {
  return kind === 'check-stand';
}

/** Whether a task looks for regrowth, or cuts a cover that has grown again. */
export function asksOfRegrowth({ kind }: Pick<PlannedTask, 'kind'>): boolean {
  return kind === 'check-regrowth' || kind === 'cut-again';
}

/** Whether a task looks for buds or flowers on a cover. */
export function looksForBuds({ kind }: Pick<PlannedTask, 'kind'>): boolean {
  return kind === 'look-for-buds';
}

/**
 * The stand of which what a task looks for can be told: sown, and where regrowth is asked of, cut. A look is planned before
 * the work it looks at is done, and nothing is to be seen until then.
 */
export function standToTellOf({ stands }: Garden, task: Pick<PlannedTask, 'kind' | 'subject'>): Stand | undefined {
  const { type, id } = task.subject;
  const stand = type === 'stand' ? stands.find((each) => each.id === id) : undefined;
  if (asksOfRegrowth(task)) return stand?.cutOn === undefined ? undefined : stand;
  if (looksAtStand(task) || looksForBuds(task)) return stand?.sow.happened ? stand : undefined;
  return undefined;
}

/** The pile whose compost a task looks at, where it is such a task. */
export function lookedAtPile({ makes }: Pick<PlannedTask, 'makes'>): string | undefined {
  return makes.flatMap((effect) => (effect.makes === 'pile-finished' ? [effect.pileId] : []))[0];
}
