/**
 * What the This week page shows, picked from the plan.
 */
import { addDays, type Day, daysBetween, eachDay } from '../measures/days.ts';
import { tasksOf, titleOf } from '../schedule/entry-text.ts';
import type { Change, Entry, Plan, PlannedTask } from '../schedule/plan.ts';

/** Days ahead within which a closing window is named. House default: this weekly list and the next. */
export const CLOSING_SOON_DAYS = 14;

/** Days the plan is looked at to either side of today. House default: the plan reaches a year and a little ahead. */
export const LOOK_DAYS = 400;

/** A calendar entry with its tasks. */
export interface EntryWithTasks {
  entry: Entry;
  /** Work first, then checks that ride along. */
  tasks: readonly PlannedTask[];
}

export interface DayOfWork {
  day: Day;
  entries: readonly EntryWithTasks[];
}

/** Work whose window is about to close. */
export interface Closing {
  key: string;
  title: string;
  latest: Day;
  daysLeft: number;
}

/** A week of a plan. */
export interface WeekView {
  monday: Day;
  /** Days that have something on them. */
  days: readonly DayOfWork[];
  /** Minutes of work still to be done in the week, and done in it. */
  openMinutes: number;
  doneMinutes: number;
  /** The week after, by day. */
  next: readonly DayOfWork[];
  /** The first day after the week that has something on it. */
  comes: DayOfWork | undefined;
}

/** The week that begins on a Monday. */
export function weekView(plan: Plan, monday: Day): WeekView {
  const days = daysOfWork(plan, monday, addDays(monday, 6));
  const entries = days.flatMap((day) => day.entries);
  const minutes = (wanted: (row: EntryWithTasks) => boolean): number =>
    entries.filter(wanted).reduce((sum, { entry }) => sum + entry.effortMinutes, 0);
  const [comes] = plan.entries.flatMap(({ day }) => (day > addDays(monday, 6) ? [day] : [])).sort();
  return {
    monday,
    days,
    openMinutes: minutes(isToDo),
    doneMinutes: minutes(({ entry }) => entry.state === 'done'),
    next: daysOfWork(plan, addDays(monday, 7), addDays(monday, 13)),
    comes: comes === undefined ? undefined : daysOfWork(plan, comes, comes)[0],
  };
}

function daysOfWork(plan: Plan, from: Day, to: Day): DayOfWork[] {
  return eachDay(from, to)
    .map((day) => ({
      day,
      entries: plan.entries
        .filter((entry) => entry.day === day && entry.state !== 'skipped')
        .map((entry) => ({ entry, tasks: tasksOf(plan, entry) })),
    }))
    .filter(({ entries }) => entries.length > 0);
}

/** Whether an entry still asks for something: open, or late and worth doing. */
export function isToDo({ entry, tasks }: EntryWithTasks): boolean {
  return entry.state === 'open' || (entry.state === 'lapsed' && tasks.some(({ ifMissed }) => ifMissed === 'still do'));
}

/** Checks that ride along with the work of an entry; none when the entry is itself a check. */
export function ridingAlong({ tasks }: EntryWithTasks): PlannedTask[] {
  const [first, ...others] = tasks;
  return first?.weight === 'check' ? [] : others.filter(({ weight }) => weight === 'check');
}

/** Open work whose window closes soon, the same job closing on the same day named once; soonest first. */
export function closingSoon({ plan, today }: { plan: Plan; today: Day }): Closing[] {
  const limit = addDays(today, CLOSING_SOON_DAYS);
  const jobs = new Map<string, PlannedTask[]>();
  for (const task of plan.tasks) {
    if (task.state !== 'open' || task.weight === 'check') continue;
    const { latest } = task.window;
    if (latest < today || latest > limit) continue;
    const name = `${latest} ${task.lotId}`;
    jobs.set(name, [...(jobs.get(name) ?? []), task]);
  }
  return [...jobs.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, tasks]) => {
      const [first] = tasks;
      if (first === undefined) return [];
      const { latest } = first.window;
      return [{ key: first.key, title: titleOf(tasks), latest, daysLeft: daysBetween(today, latest) }];
    });
}

/** What lapsed and is still worth naming, the latest closed first. */
export function lapsedTasks(plan: Plan): PlannedTask[] {
  return plan.tasks
    .filter(({ state }) => state === 'lapsed')
    .sort((a, b) =>
      a.window.latest === b.window.latest ? (a.key < b.key ? -1 : 1) : a.window.latest > b.window.latest ? -1 : 1,
    );
}

/** Changes alike in kind, days and reasons, told together. */
export interface ChangeGroup {
  kind: Change['kind'];
  titles: readonly string[];
  from?: Day;
  to?: Day;
  because: Change['because'];
}

/**
 * What the plan's changes of a kind come to, newest first, those alike told together. A task that moved several times
 * is told once, from where it first stood; one that is settled or lapsed is told elsewhere.
 */
export function changesOf(plan: Plan, kind: Change['kind']): ChangeGroup[] {
  const settled = new Set(plan.tasks.filter(({ state }) => state !== 'open').map(({ key }) => key));
  const groups = new Map<string, ChangeGroup>();
  for (const change of netChanges(plan.changes)) {
    if (change.kind !== kind || settled.has(change.key)) continue;
    const { from, to, because } = change;
    const name = JSON.stringify([from, to, because]);
    const titles = [...new Set([...(groups.get(name)?.titles ?? []), change.title])];
    const days = { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
    groups.set(name, { kind, titles, ...days, because });
  }
  return [...groups.values()];
}

/** One change a task: the newest, told from where the oldest began. What came back to where it was is left out. */
function netChanges(changes: readonly Change[]): Change[] {
  const oldest = new Map(changes.filter(isMove).map((change) => [change.key, change]));
  const seen = new Set<string>();
  return changes.filter(isMove).flatMap((newest) => {
    if (seen.has(newest.key)) return [];
    seen.add(newest.key);
    const first = oldest.get(newest.key) ?? newest;
    if (first.kind === 'added') return newest.kind === 'dropped' ? [] : [{ ...newest, kind: 'added' }];
    const net = first.from === undefined ? newest : { ...newest, from: first.from };
    return net.kind === 'moved' && net.from === net.to ? [] : [net];
  });
}

function isMove({ kind }: Change): boolean {
  return kind !== 'reworded';
}
