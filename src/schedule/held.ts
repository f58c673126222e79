/**
 * What was published for the next days and is held to: a plan made again moves such an entry only for a reason.
 *
 * Held days are those of the last plan of an earlier day, and stay the same all day. So what is said and taken back on one
 * day leaves no trace, and of what is taken back later, the days are known that stood before it was said.
 */
import { addDays, type Day, daysBetween } from '../measures/days.ts';
import type { TaskDraft, TaskKey, Window } from '../practices/draft.ts';
import type { Room } from './gather.ts';
import type { HeldDay, Plan, PlannedTask } from './plan.ts';
import { type Household, isAway, leastUnfitness, unfitness } from './work-days.ts';

/** Days ahead, today's own besides, for which a published day is held. House default: the week a list is made for. */
export const HELD_DAYS = 7;

/** What was said today, as far as held days hang on it. */
export interface SaidToday {
  /** Whether anything but weather was said: work whose window that changed is then free to move with it. */
  edited: boolean;
  /** The day something was said that was taken back today: only what was published before that day is held to. */
  takenBackTo?: Day;
}

/** What held days hang on. */
interface HeldInput {
  today: Day;
  drafts: readonly TaskDraft[];
  household: Household;
  said?: SaidToday | undefined;
}

/**
 * The days held to today, with those that were left lately. Worked out once a day, from the last plan of an earlier one.
 */
export function heldRecord(published: Plan | undefined, input: HeldInput): HeldDay[] {
  if (published === undefined) return [];
  const { today } = input;
  const known = (published.held ?? []).filter(({ day, since }) => day >= today && since < today);
  if (published.today >= today) return known;
  const stood = new Map(published.tasks.filter(isToHold).map(({ key, day }) => [key, day]));
  const rows = known.map((row) =>
    row.left === undefined && stood.get(row.key) !== row.day ? { ...row, left: published.today } : row,
  );
  const held = new Set(rows.filter(({ left }) => left === undefined).map(({ key }) => key));
  const fresh = published.tasks
    .filter(isToHold)
    .filter(({ key, day }) => day >= today && day <= addDays(today, HELD_DAYS) && !held.has(key))
    .map(({ key, day, window }) => ({ key, day, since: published.today, window }));
  // A file brought in before the first plan of a day is held against yesterday's windows, for there are no others.
  const windows = new Map(input.said?.edited ? [] : input.drafts.map(({ key, window }) => [key, window]));
  return [...rows, ...fresh].map((row) => ({
    ...row,
    window: windows.get(row.key) ?? row.window,
    unfitness: unfitness(row.day, input.household),
  }));
}

/** Whether a task stands on a day that the household has been told to come: pins are held to anyway. */
function isToHold({ state, ifMissed, pinned }: PlannedTask): boolean {
  return !pinned && (state === 'open' || (state === 'lapsed' && ifMissed === 'still do'));
}

/**
 * The days to hold to, by task. Let go are those that no longer suit the household as they did this morning, and those of
 * work whose window something said today has changed.
 */
export function heldDays(record: readonly HeldDay[], input: HeldInput): Record<TaskKey, Day> {
  const { today, drafts, household, said } = input;
  const before = said?.takenBackTo ?? today;
  const windows = new Map(drafts.map(({ key, window }) => [key, window]));
  const held = record.filter(({ key, day, since, left, window, unfitness: was }) => {
    const now = windows.get(key);
    if (now === undefined || since >= before || (left !== undefined && left < before)) return false;
    if (!isAway(day, household.away) && unfitness(day, household) > was) return false;
    return !(said?.edited === true && differs(window, now));
  });
  return Object.fromEntries(held.map(({ key, day }) => [key, day]));
}

function differs(a: Window, b: Window): boolean {
  return a.earliest !== b.earliest || a.preferred !== b.preferred || a.latest !== b.latest;
}

/** A held day where a task can still be done on it: its room holds it, and somebody is at home if that can be. */
export function keptIn(room: Room, held: Day | undefined, household: Household): Day | undefined {
  if (held === undefined || held < room.from || held > room.to) return undefined;
  return isAway(held, household.away) && leastUnfitness(room, household) < 2 ? undefined : held;
}

/**
 * For each task not held to, the days to which work of its group is: the same job with the same steady day. A group whose
 * preferred day has shifted is not torn apart by those of it that stay.
 */
export function heldCompany(
  drafts: ReadonlyMap<TaskKey, TaskDraft>,
  steady: ReadonlyMap<TaskKey, { day: Day }>,
  held: Readonly<Record<TaskKey, Day>> = {},
): Map<TaskKey, Day[]> {
  const groupOf = (key: TaskKey): string => `${steady.get(key)?.day} ${drafts.get(key)?.job.id}`;
  const days = new Map<string, Day[]>();
  for (const [key, day] of Object.entries(held)) days.set(groupOf(key), [...(days.get(groupOf(key)) ?? []), day]);
  const others = [...drafts.keys()].filter((key) => held[key] === undefined);
  return new Map(others.flatMap((key) => (days.has(groupOf(key)) ? [[key, days.get(groupOf(key)) ?? []]] : [])));
}

/** The day of its company a task can go on with no loss, the nearest of several, the earlier of two; else its own. */
export function dayWithCompany(room: Room, own: Day, company: readonly Day[], household: Household): Day {
  const apart = (day: Day): number => Math.abs(daysBetween(own, day));
  const [best] = company
    .filter((day) => day >= room.from && day <= room.to && unfitness(day, household) <= unfitness(own, household))
    .sort((a, b) => apart(a) - apart(b) || (a < b ? -1 : 1));
  return best ?? own;
}
