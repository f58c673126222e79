/**
 * What was published and is held to, so that a plan made again moves as little as it can: work of the next days goes
 * nowhere without a reason, and later work stays until another day has come to suit it clearly better.
 *
 * Held days are those of the last plan of an earlier day, and stay the same all day. So what is said and taken back on one
 * day leaves no trace, and of what is taken back later, the days are known that stood before it was said: see taken-back.ts.
 */
import { addDays, type Day, daysBetween, weekStart } from '../measures/days.ts';
import type { TaskDraft, TaskKey, Window } from '../practices/draft.ts';
import { GATHER_DAYS, type Room } from './gather.ts';
import { CHANGES_KEPT_DAYS, type HeldDay, type Plan, type PlannedTask } from './plan.ts';
import { type TakenBack, touchedBy } from './taken-back.ts';
import { type Household, isAway, leastUnfitness, unfitness } from './work-days.ts';

/** Days ahead, today's own besides, for which nothing moves without a reason. House default: the week a list is made for. */
export const HELD_DAYS = 7;
/**
 * Days by which the day that suits later work best may shift before the work goes with it. House default: from one end of
 * a weekend to the middle of the week.
 */
export const SHIFT_DAYS = 3;

/** What was said today, as far as held days hang on it. */
export interface SaidToday {
  /** Whether the garden, its plans or its household were told anew: work whose window that changed goes with it. */
  edited: boolean;
  /** Whether work was done or skipped: work whose best day that shifted by more than {@link SHIFT_DAYS} goes with it. */
  settled: boolean;
  /** What was taken back today: of the work it is about, only what was published before it was said is held to. */
  takenBack?: TakenBack;
}

/** What held days hang on. */
interface HeldInput {
  today: Day;
  drafts: readonly TaskDraft[];
  household: Household;
  said?: SaidToday | undefined;
}

/** The days that earlier days have published, those left lately among them; found the same all day. */
export function heldThisMorning(published: Plan | undefined, { today, drafts, said }: HeldInput): HeldDay[] {
  const earlier = (published?.held ?? []).filter(({ day, since }) => day >= today && since < today);
  const rows = earlier.map(({ left, ...row }) => (left === undefined || left >= today ? row : { ...row, left }));
  if (published === undefined || published.today >= today) return rows;
  // What is said or taken back before the first plan of a day is held against yesterday's windows: there are no others.
  const windows = windowsOf(said?.edited || said?.takenBack ? [] : drafts);
  return rows.map((row) => ({ ...row, window: windows.get(row.key) ?? row.window }));
}

/**
 * The days to hold to, by task. Let go are those that no longer suit the household as they did, those of work
 * that what was said today has moved, and later ones from which the day that suits best has shifted.
 */
export function heldDays(
  rows: readonly HeldDay[],
  { today, drafts, household, said }: HeldInput,
): Record<TaskKey, Day> {
  const windows = windowsOf(drafts);
  const stoodBefore = standsBefore(rows, { today, drafts, said });
  const held = rows.filter((row) => {
    const now = windows.get(row.key);
    const before = stoodBefore(row.key);
    if (now === undefined || row.since >= before || (row.left !== undefined && row.left < before)) return false;
    if (!isAway(row.day, household.away) && unfitness(row.day, household) > row.unfitness) return false;
    if (said?.edited === true && differs(row.window, now)) return false;
    if (row.day > addDays(today, HELD_DAYS)) return !hasShifted(row.given, now.preferred);
    return !(said?.settled === true && hasShifted(row.window.preferred, now.preferred));
  });
  return Object.fromEntries(held.map(({ key, day }) => [key, day]));
}

/** For each task the day before which what stood is held to: today, or when something about it was said that is taken back. */
function standsBefore(
  rows: readonly HeldDay[],
  {
    today,
    drafts,
    said: { takenBack } = { edited: false, settled: false },
  }: Pick<HeldInput, 'today' | 'drafts' | 'said'>,
): (key: TaskKey) => Day {
  if (takenBack === undefined) return () => today;
  const morning = new Map(rows.filter(({ left }) => left === undefined).map(({ key, window }) => [key, window]));
  const altered = drafts.filter(({ key, window }) => differs(morning.get(key) ?? window, window));
  const touched = touchedBy(
    takenBack,
    drafts,
    altered.map(({ key }) => key),
  );
  return (key) => (touched.has(key) ? takenBack.since : today);
}

/** What is held to from tomorrow on, with what was left lately: this morning's days, and those this plan gives instead. */
export function heldFromNow(
  morning: readonly HeldDay[],
  tasks: readonly PlannedTask[],
  { today, drafts, household }: HeldInput,
): HeldDay[] {
  const windows = windowsOf(drafts);
  const stands = new Map(tasks.filter(isToHold).map(({ key, day }) => [key, day]));
  const rows = morning
    .map((row) => {
      if (row.left !== undefined) return row;
      return stands.get(row.key) === row.day
        ? { ...row, unfitness: unfitness(row.day, household) }
        : { ...row, left: today };
    })
    .filter(({ left }) => left === undefined || left >= addDays(today, -CHANGES_KEPT_DAYS));
  const held = new Set(rows.filter(({ left }) => left === undefined).map(({ key }) => key));
  const given = [...stands].flatMap(([key, day]) => {
    const window = windows.get(key);
    if (window === undefined || held.has(key)) return [];
    return [{ key, day, since: today, given: window.preferred, window, unfitness: unfitness(day, household) }];
  });
  return [...rows, ...given];
}

function windowsOf(drafts: readonly TaskDraft[]): Map<TaskKey, Window> {
  return new Map(drafts.map(({ key, window }) => [key, window]));
}

/** Whether a task stands on a day that the household has been told to come: pins are held to anyway. */
function isToHold({ state, ifMissed, pinned }: PlannedTask): boolean {
  return !pinned && (state === 'open' || (state === 'lapsed' && ifMissed === 'still do'));
}

/** Whether the day that suits work best lies so far from where it lay that later work goes with it. */
export function hasShifted(then: Day, now: Day): boolean {
  return Math.abs(daysBetween(then, now)) > SHIFT_DAYS;
}

function differs(a: Window, b: Window): boolean {
  return a.earliest !== b.earliest || a.preferred !== b.preferred || a.latest !== b.latest;
}

/** A held day where a task can still be done on it: its room holds it, and somebody is at home if that can be. */
export function keptIn(room: Room, held: Day | undefined, household: Household): Day | undefined {
  if (held === undefined || held < room.from || held > room.to) return undefined;
  return isAway(held, household.away) && leastUnfitness(room, household) < 2 ? undefined : held;
}

/** Work that goes on one day as far as only steady days count: the same job with the same one. */
type Group = readonly TaskDraft[];

/**
 * The days held to once groups are looked at: later work whose group has work that cannot go on its day is let go, to be
 * done in one go with it. What cannot is new, has been let go, or no longer has the day in its window.
 */
export function heldTogether(
  drafts: readonly TaskDraft[],
  steady: ReadonlyMap<TaskKey, { day: Day }>,
  { held = {}, today }: { held?: Readonly<Record<TaskKey, Day>>; today: Day },
): Record<TaskKey, Day> {
  const kept = Object.fromEntries(
    drafts.flatMap(({ key, window }) => {
      const day = held[key];
      return day !== undefined && day >= window.earliest && day <= window.latest ? [[key, day]] : [];
    }),
  );
  const letGo = groupsOf(drafts, steady).flatMap((group) => {
    const days = daysOf(group, kept);
    const apart = group.some((draft) => kept[draft.key] === undefined && !days.some((day) => comesTo(draft, day)));
    return apart ? group.filter(({ key }) => (kept[key] ?? '') > addDays(today, HELD_DAYS)) : [];
  });
  const gone = new Set(letGo.map(({ key }) => key));
  return Object.fromEntries(Object.entries(held).filter(([key]) => !gone.has(key)));
}

/** Later work that would ease an overfull week if it went on its steady day instead of the one it is held to. */
export function easingOf(
  held: Readonly<Record<TaskKey, Day>>,
  steady: ReadonlyMap<TaskKey, { day: Day }>,
  { today, overfull }: { today: Day; overfull: readonly Day[] },
): TaskKey[] {
  const weeks = new Set(overfull);
  return Object.entries(held).flatMap(([key, day]) => {
    const elsewhere = steady.get(key)?.day ?? day;
    const eases = weeks.has(weekStart(day)) && weekStart(elsewhere) !== weekStart(day);
    return eases && day > addDays(today, HELD_DAYS) ? [key] : [];
  });
}

/** For each task not held to, the days to which work of its group is: there it can be done in one go with it. */
export function heldCompany(
  drafts: ReadonlyMap<TaskKey, TaskDraft>,
  steady: ReadonlyMap<TaskKey, { day: Day }>,
  held: Readonly<Record<TaskKey, Day>> = {},
): Map<TaskKey, Day[]> {
  return new Map(
    groupsOf([...drafts.values()], steady).flatMap((group) => {
      const days = daysOf(group, held);
      const others = days.length === 0 ? [] : group.filter(({ key }) => held[key] === undefined);
      return others.map((draft) => [draft.key, days.filter((day) => comesTo(draft, day))] as const);
    }),
  );
}

function groupsOf(drafts: readonly TaskDraft[], steady: ReadonlyMap<TaskKey, { day: Day }>): Group[] {
  const groups = new Map<string, TaskDraft[]>();
  for (const draft of drafts) {
    const name = `${steady.get(draft.key)?.day} ${draft.job.id}`;
    groups.set(name, [...(groups.get(name) ?? []), draft]);
  }
  return [...groups.values()];
}

function daysOf(group: Group, held: Readonly<Record<TaskKey, Day>>): Day[] {
  return [...new Set(group.flatMap(({ key }) => held[key] ?? []))].sort();
}

/** Whether work may come to a day for the sake of company: in its window, and not before its time. */
function comesTo({ window: { earliest, preferred, latest } }: TaskDraft, day: Day): boolean {
  const [from, to] = [addDays(preferred, -SHIFT_DAYS), addDays(preferred, GATHER_DAYS)];
  return day >= earliest && day >= from && day <= latest && day <= to;
}

/** The day of its company a task can go on with no loss, the nearest of several, the earlier of two; else its own. */
export function dayWithCompany(room: Room, own: Day, company: readonly Day[], household: Household): Day {
  const apart = (day: Day): number => Math.abs(daysBetween(own, day));
  const [best] = company
    .filter((day) => day >= room.from && day <= room.to && unfitness(day, household) <= unfitness(own, household))
    .sort((a, b) => apart(a) - apart(b) || (a < b ? -1 : 1));
  return best ?? own;
}
