/**
 * What a report would do to the plan, told before it is taken in: what moves and why, what no longer fits and what gives
 * way, what comes and what goes.
 */
import { addDays, type Day } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import type { Reason, TaskKey } from '../practices/draft.ts';
import { titleOf } from '../schedule/entry-text.ts';
import { reasonSentence } from '../schedule/explain.ts';
import type { Clash, Plan, PlannedTask } from '../schedule/plan.ts';
import { standsBecause } from '../schedule/stands-because.ts';
import type { Hours } from '../schedule/week-hours.ts';
import { otherwiseInWords, toldOtherwise } from './told-otherwise.ts';

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
  /** All that its day, or its going, rests on: what drives the change first. */
  reasons: readonly Reason[];
}

/** Work that would no longer keep both its window and its order, and which of the two gives way. */
export interface PreviewedClash extends Clash {
  gives: string;
  /** What its dates rest on. */
  reasons: readonly Reason[];
}

/** What a report comes to. */
export interface ChangePreview {
  moved: readonly PreviewedWork[];
  clashes: readonly PreviewedClash[];
  added: readonly PreviewedWork[];
  dropped: readonly PreviewedWork[];
  /** What stays under its old title and says something else; `because` is what it says now. */
  reworded: readonly PreviewedWork[];
}

/**
 * The plan with a report taken in held against the one without.
 *
 * @param household how the household works: where it is given, the reasons say too what keeps a task off its best day
 */
export function changePreview(before: Plan, after: Plan, household?: Hours): ChangePreview {
  const [was, will] = [toDo(before), toDo(after)];
  const reasonsOf = (task: PlannedTask): Reason[] => [
    ...(household === undefined ? [] : standsBecause(task, { plan: after, household })),
    ...task.reasons,
  ];
  const moved: Told[] = [];
  const added: Told[] = [];
  const reworded: Told[] = [];
  for (const task of will.values()) {
    const old = was.get(task.key);
    if (old === undefined) {
      added.push({ task, to: task.day, because: sentence(task.reasons[0]), reasons: reasonsOf(task) });
      continue;
    }
    const [from, to] = [old.day, task.day];
    const reasons = reasonsOf(task);
    if (from !== to) {
      const because = whyMoved(old, task, was, will);
      moved.push({ task, from, to, because: sentence(because), reasons: [because, ...reasons] });
    }
    const otherwise = toldOtherwise(old, task);
    if (otherwise !== undefined) reworded.push({ task: old, from, to, because: otherwiseInWords(otherwise), reasons });
  }
  const named = withoutRenamed(added, was, will);
  const settled = new Set(after.tasks.flatMap(({ key, state }) => (state === 'done' ? [key] : [])));
  const dropped = [...was.values()]
    .filter(({ key }) => !will.has(key) && !settled.has(key) && !named.renamed.has(key))
    .map((task) => ({
      task,
      from: task.day,
      because: sentence(NO_LONGER_WANTED),
      reasons: [NO_LONGER_WANTED, ...task.reasons],
    }));
  return {
    moved: gathered(moved),
    clashes: newClashes(before, after),
    added: gathered(named.added),
    dropped: gathered(dropped),
    reworded: gathered(reworded),
  };
}

/** What is added without work that only goes by another key now: the same job on the same thing and day as some that went. */
function withoutRenamed(added: readonly Told[], was: ByKey, will: ByKey): { added: Told[]; renamed: Set<TaskKey> } {
  const gone = [...was.values()].filter(({ key }) => !will.has(key));
  const renamed = new Set<TaskKey>();
  const fresh = added.filter(({ task }) => {
    const old = gone.find((each) => !renamed.has(each.key) && isSameWork(each, task));
    if (old !== undefined) renamed.add(old.key);
    return old === undefined;
  });
  return { added: fresh, renamed };
}

function isSameWork(a: PlannedTask, b: PlannedTask): boolean {
  return (
    a.kind === b.kind &&
    a.day === b.day &&
    a.title === b.title &&
    a.subject.type === b.subject.type &&
    a.subject.id === b.subject.id
  );
}

const OWN = "the garden's own plan" as const;
const NO_LONGER_WANTED: Reason = { rule: 'schedule.no-longer-wanted', saw: {}, source: OWN };

interface Told {
  task: PlannedTask;
  from?: Day;
  to?: Day;
  because: string;
  reasons: readonly Reason[];
}

type ByKey = ReadonlyMap<TaskKey, PlannedTask>;

function toDo({ tasks }: Plan): ByKey {
  const open = tasks.filter(
    ({ state, ifMissed }) => state === 'open' || (state === 'lapsed' && ifMissed === 'still do'),
  );
  return new Map(open.map((task) => [task.key, task]));
}

/**
 * The one reason that drives a task off its old day: work it waits for, then a window that has changed, then how the
 * household's days fill.
 */
function whyMoved(old: PlannedTask, task: PlannedTask, was: ByKey, will: ByKey): Reason {
  const first = task.after.flatMap(({ key, minDays }) => {
    const ahead = will.get(key);
    return ahead === undefined ? [] : [{ ahead, from: addDays(ahead.day, minDays) }];
  });
  const holding = first.filter(({ from }) => from > old.day).sort((a, b) => (a.from < b.from ? 1 : -1));
  const changed = first.filter(({ ahead }) => was.get(ahead.key)?.day !== ahead.day);
  return follows(holding[0]) ?? byWindow(old, task) ?? follows(changed[0]) ?? byOtherWork(task, will);
}

function follows(first: { ahead: PlannedTask } | undefined): Reason | undefined {
  return first && { rule: 'schedule.follows', saw: { task: first.ahead.title, day: first.ahead.day }, source: OWN };
}

/** The reason that names the end of the window that changed, first the one that shuts the old day out. */
function byWindow(old: PlannedTask, { window, reasons }: PlannedTask): Reason | undefined {
  const { earliest, latest, preferred } = window;
  // Late before and after: the window says nothing of the day.
  if (old.day > old.window.latest && old.day > latest) return undefined;
  const ends = [
    ...(old.day < earliest ? [earliest] : []),
    ...(old.day > latest ? [latest] : []),
    ...(old.window.earliest === earliest ? [] : [earliest]),
    ...(old.window.latest === latest ? [] : [latest]),
    ...(old.window.preferred === preferred ? [] : [preferred]),
  ];
  if (ends.length === 0) return undefined;
  const known = new Set(old.reasons.map((reason) => JSON.stringify(reason)));
  const fresh = reasons.filter((reason) => !known.has(JSON.stringify(reason)));
  for (const end of ends) {
    const named = fresh.find(({ saw, limit }) => [limit, ...Object.values(saw)].includes(end));
    if (named !== undefined) return named;
  }
  return { rule: 'schedule.window', saw: { earliest, latest }, source: OWN };
}

function byOtherWork({ key, day, lotId }: PlannedTask, will: ByKey): Reason {
  const company = [...will.values()].some((other) => other.lotId === lotId && other.key !== key);
  return { rule: company ? 'schedule.gathered' : 'schedule.alone', saw: { day }, source: OWN };
}

function sentence(reason: Reason | undefined): string {
  return reason === undefined ? '' : reasonSentence(reason);
}

function newClashes(before: Plan, after: Plan): PreviewedClash[] {
  const known = new Set(before.clashes.map(({ key, what }) => `${key} ${what}`));
  const tasks = new Map(after.tasks.map((task) => [task.key, task]));
  return after.clashes
    .filter(({ key, what }) => !known.has(`${key} ${what}`))
    .map((clash) => {
      const task = tasks.get(clash.key);
      return { ...clash, gives: givesWay(task, clash), reasons: task?.reasons ?? [] };
    });
}

/** Order goes before a window, and a day the gardener pinned before both. */
function givesWay(task: PlannedTask | undefined, { orderYields }: Clash): string {
  if (task === undefined) return '';
  if (orderYields)
    return `The order gives way: it keeps its window and stands on ${dated(task.day)}. ${task.yieldNote ?? ''}`.trim();
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
  const reasons = [
    ...new Map(rows.flatMap((row) => row.reasons.map((each) => [JSON.stringify(each), each] as const))).values(),
  ];
  return [{ ...rest, keys: tasks.map(({ key }) => key), title: titleOf(tasks), reasons }];
}
