/**
 * The order of a day's entries: as the work goes on, because a list is ticked downwards.
 */
import type { TaskKey } from '../practices/draft.ts';
import type { Entry, PlannedTask } from './plan.ts';

type Waiting = Pick<PlannedTask, 'key' | 'after'>;

/**
 * Entries by day, and within each day what others wait for first, through however many tasks they wait; then by the hour,
 * what has none before what has one; then by id. Lots that wait for each other keep the last two.
 *
 * @param tasks every task of the plan, also those that stand in no entry: work may wait through them
 */
export function inWorkOrder(entries: readonly Entry[], tasks: readonly Waiting[]): Entry[] {
  const afterOf = new Map(tasks.map(({ key, after }) => [key, after.map((each) => each.key)]));
  const byDay = new Map<string, Entry[]>();
  for (const entry of [...entries].sort(byHourThenId)) byDay.set(entry.day, [...(byDay.get(entry.day) ?? []), entry]);
  return [...byDay.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, ofDay]) => workedThrough(ofDay, afterOf));
}

/** The first of those left that waits for no other of them, again and again. */
function workedThrough(ofDay: readonly Entry[], afterOf: ReadonlyMap<TaskKey, readonly TaskKey[]>): Entry[] {
  if (ofDay.length < 2) return [...ofDay];
  const awaited = new Map(ofDay.map((entry) => [entry, awaitedBy(entry, afterOf)]));
  const left = [...ofDay];
  const ordered: Entry[] = [];
  while (left.length > 0) {
    const free = left.findIndex(
      (entry) => !left.some((other) => other !== entry && waitsFor(awaited.get(entry), other)),
    );
    ordered.push(...left.splice(Math.max(0, free), 1));
  }
  return ordered;
}

function waitsFor(awaited: ReadonlySet<TaskKey> | undefined, { keys }: Entry): boolean {
  return keys.some((key) => awaited?.has(key) === true);
}

/** All that the tasks of an entry wait for, directly or through others. */
function awaitedBy({ keys }: Entry, afterOf: ReadonlyMap<TaskKey, readonly TaskKey[]>): Set<TaskKey> {
  const found = new Set<TaskKey>();
  const open = [...keys];
  for (let key = open.pop(); key !== undefined; key = open.pop()) {
    for (const before of afterOf.get(key) ?? []) {
      if (found.has(before)) continue;
      found.add(before);
      open.push(before);
    }
  }
  return found;
}

function byHourThenId(a: Entry, b: Entry): number {
  const [hourA, hourB] = [a.at?.from ?? '', b.at?.from ?? ''];
  if (hourA !== hourB) return hourA < hourB ? -1 : 1;
  return a.lotId < b.lotId ? -1 : 1;
}
