/**
 * The days a draft may be put on once the order of work has been taken into account.
 */
import type { DoneMark } from '../garden/garden.ts';
import { addDays, clampDay, type Day, earliestOf, latestOf } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import type { Room } from './gather.ts';
import type { OrderedWindow } from './windows.ts';

/** Days on which each task is done or to be done, as far as they are known. */
export type DayOf = (key: TaskKey) => Day | undefined;

/** The days tasks were done on, and failing that the days they have been given. */
export function dayOfTasks(done: readonly DoneMark[], given: ReadonlyMap<TaskKey, { day: Day }>): DayOf {
  const doneOn = new Map(done.map(({ key, on }) => [key, on]));
  return (key) => doneOn.get(key) ?? given.get(key)?.day;
}

/** The first days on which everything a draft waits for allows it; empty when it waits for nothing known. */
export function waitsOf({ after }: Pick<TaskDraft, 'after'>, dayOf: DayOf): Day[] {
  return after.flatMap(({ key, minDays }) => {
    const day = dayOf(key);
    return day === undefined ? [] : [addDays(day, minDays)];
  });
}

/**
 * The ordered window of a draft, closed as soon after what it waits for as its `maxDays` ask: a young cover is looked at
 * within three weeks of the day it is sown on, whichever of its days that is.
 */
export function closedAfter({ after }: Pick<TaskDraft, 'after'>, ordered: OrderedWindow, dayOf: DayOf): OrderedWindow {
  const closes = after.flatMap(({ key, maxDays }) => {
    const day = dayOf(key);
    return maxDays === undefined || day === undefined ? [] : [addDays(day, maxDays)];
  });
  return { ...ordered, latest: earliestOf(ordered.latest, ...closes) };
}

/**
 * The room of a draft: its ordered window from the day its waits allow. Where that leaves nothing it may run to the
 * end of the draft's own window, at the cost of what waits for it in turn.
 *
 * @returns nothing when the draft's own window closes before it may begin
 */
export function roomOf(draft: TaskDraft, ordered: OrderedWindow, waits: readonly Day[]): Room | undefined {
  const from = latestOf(ordered.earliest, ...waits);
  const to = from <= ordered.latest ? ordered.latest : draft.window.latest;
  if (from > to) return undefined;
  return { draft, from, to, preferred: clampDay(draft.window.preferred, from, to) };
}

/** Where a task is done: a bed, a bin's pile or the garden at large. */
export function placeOf({ subject }: TaskDraft): string {
  if ('bedId' in subject) return `bed:${subject.bedId}`;
  return `${subject.type}:${subject.id}`;
}

/** Keys of work by the place it leads to, those of a place in the order of the drafts. */
export function workByPlace(drafts: readonly TaskDraft[]): ReadonlyMap<string, readonly TaskKey[]> {
  const byPlace = new Map<string, TaskKey[]>();
  for (const draft of drafts) {
    if (draft.weight !== 'work') continue;
    const there = byPlace.get(placeOf(draft));
    if (there === undefined) byPlace.set(placeOf(draft), [draft.key]);
    else there.push(draft.key);
  }
  return byPlace;
}

/** Where a trip for work leads: to a bed, or to the yard with its bins and piles; nowhere for a deadline or the garden at large. */
export function tripTo({
  subject,
  weight,
}: Pick<TaskDraft, 'subject'> & Partial<Pick<TaskDraft, 'weight'>>): string | undefined {
  if (weight === 'deadline' || subject.type === 'garden') return undefined;
  return subject.type === 'pile' ? 'yard' : `bed:${'bedId' in subject ? subject.bedId : subject.id}`;
}
