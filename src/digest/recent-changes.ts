/**
 * What moved lately and why, told once.
 */
import { addDays, type Day, type Instant, weekStart } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import { reasonSentence } from '../schedule/explain.ts';
import type { Change, Plan } from '../schedule/plan.ts';

/** Days a change is told for where nobody says when the last list went out: from one weekly list to the next. */
const TOLD_DAYS = 7;

/** Changes alike in kind, days and reasons. */
export interface ChangeGroup {
  kind: Exclude<Change['kind'], 'reworded'>;
  keys: readonly TaskKey[];
  titles: readonly string[];
  from?: Day;
  to?: Day;
  /** Why, in sentences; may hold marked amounts and days. */
  because: readonly string[];
}

/**
 * The changes since the last list, or of the last seven days: moved, then dropped, then added, each by day. Several changes of one task are
 * told as one, and a task that came back to where it was is not told. New words for an old day are no news.
 *
 * @param since when the last list went out
 */
export function recentChanges(plan: Plan, since: Instant = addDays(plan.today, -TOLD_DAYS)): ChangeGroup[] {
  const byKey = new Map<TaskKey, Change[]>();
  for (const change of plan.changes) {
    if (change.at <= since || change.kind === 'reworded') continue;
    byKey.set(change.key, [...(byKey.get(change.key) ?? []), change]);
  }
  return gathered([...byKey.values()].flatMap(toldOnce)).sort(inOrder);
}

/** Weeks after its own whose moves a list tells one by one. House default: what a household arranges its days by. */
const TOLD_AHEAD_WEEKS = 8;

/** Days before a Monday from which its list is the one to read: on Saturday and Sunday one looks ahead. House default. */
const LOOKED_AHEAD_DAYS = 2;

/** What is told one by one in the list of a week, and what only counts there. */
export interface ChangesTold {
  near: readonly ChangeGroup[];
  later: readonly ChangeGroup[];
}

/**
 * Changes as the list of a week tells them: in the week that is, and from Saturday on in the next, those that touch it or
 * the weeks up to {@link TOLD_AHEAD_WEEKS} ahead, and the rest as later; in another week only what came to it or left it.
 */
export function changesTold(changes: readonly ChangeGroup[], monday: Day, today: Day): ChangesTold {
  const isCurrent = monday >= weekStart(today) && monday <= weekStart(addDays(today, LOOKED_AHEAD_DAYS));
  const last = lastNearDay(monday);
  const daysOf = ({ from, to }: ChangeGroup) => [from, to].flatMap((day) => day ?? []);
  if (!isCurrent) {
    const sunday = addDays(monday, 6);
    const touches = (group: ChangeGroup) => daysOf(group).some((day) => day >= monday && day <= sunday);
    return { near: changes.filter(touches), later: [] };
  }
  const isNear = (group: ChangeGroup) => daysOf(group).some((day) => day <= last);
  return { near: changes.filter(isNear), later: changes.filter((group) => !isNear(group)) };
}

/** The last day of the weeks that the list of a week tells of. */
export function lastNearDay(monday: Day): Day {
  return addDays(monday, 7 * (TOLD_AHEAD_WEEKS + 1) - 1);
}

/** Why, in a row; of several tasks each sentence speaks of one. May hold marked amounts and days. */
export function becauseText({ titles, because }: ChangeGroup): string {
  const text = because.join(' ');
  return titles.length > 1 && text !== '' ? `For each: ${text}` : text;
}

/** The one line that stands for what moved later in the plan; empty where nothing did. */
export function laterLine(later: readonly ChangeGroup[]): string {
  const count = later.reduce((sum, { keys }) => sum + keys.length, 0);
  return count === 0 ? '' : `And ${count} more later in the plan`;
}

type Told = Omit<ChangeGroup, 'keys' | 'titles'> & {
  key: TaskKey;
  title: string;
};

/** Changes of one task, newest first, as what they came to together. */
function toldOnce(changes: readonly Change[]): Told[] {
  const [newest, oldest] = [changes[0], changes.at(-1)];
  if (newest === undefined || oldest === undefined) return [];
  const { key, title } = newest;
  const [from, to] = [oldest.from, newest.to];
  if (from === to) return [];
  const because = [...new Set(newest.because.map(reasonSentence))];
  if (from === undefined) return to === undefined ? [] : [{ key, title, kind: 'added', to, because }];
  return to === undefined
    ? [{ key, title, kind: 'dropped', from, because }]
    : [{ key, title, kind: 'moved', from, to, because }];
}

function gathered(all: readonly Told[]): ChangeGroup[] {
  const groups = new Map<string, ChangeGroup>();
  for (const { key, title, ...rest } of all) {
    const name = JSON.stringify(rest);
    const held = groups.get(name);
    groups.set(name, {
      ...rest,
      keys: [...(held?.keys ?? []), key],
      titles: [...(held?.titles ?? []), title],
    });
  }
  return [...groups.values()];
}

const KIND_ORDER: readonly ChangeGroup['kind'][] = ['moved', 'dropped', 'added'];

function inOrder(a: ChangeGroup, b: ChangeGroup): number {
  const place = (group: ChangeGroup): string =>
    `${KIND_ORDER.indexOf(group.kind)} ${group.to ?? group.from} ${group.keys[0]}`;
  return place(a) < place(b) ? -1 : 1;
}
