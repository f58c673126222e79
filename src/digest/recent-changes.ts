/**
 * What moved lately and why, told once.
 */
import { addDays, type Day, type Instant } from '../measures/days.ts';
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
