/**
 * What a report would do to the plan, told before it is taken in: what moves and why, what no longer fits and what gives
 * way, what comes and what goes.
 */
import type { Day } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import type { Reason, TaskKey } from '../practices/draft.ts';
import { titleOf } from '../schedule/entry-text.ts';
import { reasonSentence } from '../schedule/explain.ts';
import type { Clash, Plan, PlannedTask } from '../schedule/plan.ts';

/** Tasks of one entry that a report moves, brings or takes away for one reason; texts may hold marked amounts and days. */
export interface PreviewedWork {
  keys: readonly TaskKey[];
  title: string;
  /** The day it stands on now; absent for what is added. */
  from?: Day;
  /** The day it would stand on; absent for what is dropped. */
  to?: Day;
  /** Why, in one sentence. */
  because: string;
}

/** Work that would no longer keep both its window and its order, and which of the two gives way. */
export interface PreviewedClash extends Clash {
  gives: string;
}

/** What a report comes to. */
export interface ChangePreview {
  moved: readonly PreviewedWork[];
  clashes: readonly PreviewedClash[];
  added: readonly PreviewedWork[];
  dropped: readonly PreviewedWork[];
}

/** The plan with a report taken in held against the one without. */
export function changePreview(before: Plan, after: Plan): ChangePreview {
  const [was, will] = [toDo(before), toDo(after)];
  const why = reasonsOf(before, after);
  const told = (task: PlannedTask, days: { from?: Day; to?: Day }, reasons: readonly Reason[]): Told => ({
    task,
    ...days,
    because: sentence(why.get(task.key) ?? reasons),
  });
  const moved: Told[] = [];
  const added: Told[] = [];
  for (const task of will.values()) {
    const old = was.get(task.key);
    if (old === undefined) added.push(told(task, { to: task.day }, task.reasons));
    else if (old.day !== task.day)
      moved.push(told(task, { from: old.day, to: task.day }, newReasons(old.reasons, task.reasons)));
  }
  const dropped = [...was.values()]
    .filter(({ key }) => !will.has(key))
    .map((task) => told(task, { from: task.day }, [NO_LONGER_WANTED]));
  return {
    moved: gathered(moved),
    clashes: newClashes(before, after),
    added: gathered(added),
    dropped: gathered(dropped),
  };
}

const NO_LONGER_WANTED: Reason = { rule: 'schedule.no-longer-wanted', saw: {}, source: "the garden's own plan" };

interface Told {
  task: PlannedTask;
  from?: Day;
  to?: Day;
  because: string;
}

function toDo({ tasks }: Plan): Map<TaskKey, PlannedTask> {
  const open = tasks.filter(
    ({ state, ifMissed }) => state === 'open' || (state === 'lapsed' && ifMissed === 'still do'),
  );
  return new Map(open.map((task) => [task.key, task]));
}

/** Why tasks changed, by what the new plan itself says of them. */
function reasonsOf(before: Plan, after: Plan): Map<TaskKey, readonly Reason[]> {
  const known = new Set(before.changes.map((change) => JSON.stringify(change)));
  const fresh = after.changes.filter((change) => change.kind !== 'reworded' && !known.has(JSON.stringify(change)));
  return new Map(fresh.map(({ key, because }) => [key, because]));
}

function newReasons(old: readonly Reason[], now: readonly Reason[]): readonly Reason[] {
  const known = new Set(old.map((reason) => JSON.stringify(reason)));
  const fresh = now.filter((reason) => !known.has(JSON.stringify(reason)));
  return fresh.length > 0 ? fresh : now;
}

function sentence([first]: readonly Reason[]): string {
  return first === undefined ? '' : reasonSentence(first);
}

function newClashes(before: Plan, after: Plan): PreviewedClash[] {
  const known = new Set(before.clashes.map(({ key, what }) => `${key} ${what}`));
  const tasks = new Map(after.tasks.map((task) => [task.key, task]));
  return after.clashes
    .filter(({ key, what }) => !known.has(`${key} ${what}`))
    .map((clash) => ({ ...clash, gives: givesWay(tasks.get(clash.key)) }));
}

/** Order goes before a window, and a day the gardener pinned before both. */
function givesWay(task: PlannedTask | undefined): string {
  if (task === undefined) return '';
  if (task.pinned) return 'The day you pinned is kept; the order of the work gives way.';
  return `The window gives way: it stands on ${dated(task.day)}. ${task.missedNote}`.trim();
}

function gathered(rows: readonly Told[]): PreviewedWork[] {
  const groups = new Map<string, Told[]>();
  for (const row of rows) {
    const name = `${row.from} ${row.to} ${row.task.lotId} ${row.because}`;
    groups.set(name, [...(groups.get(name) ?? []), row]);
  }
  return [...groups.values()].flatMap(workOf).sort((a, b) => (first(a) < first(b) ? -1 : 1));
}

function first({ from, to, keys }: PreviewedWork): string {
  return `${from ?? to} ${keys[0]}`;
}

function workOf(rows: readonly Told[]): PreviewedWork[] {
  const [one] = rows;
  if (one === undefined) return [];
  const { task: _task, ...rest } = one;
  const tasks = rows.map(({ task }) => task);
  return [{ keys: tasks.map(({ key }) => key), title: titleOf(tasks), ...rest }];
}
