/**
 * The weekly list: what one week of a plan asks for, and what stands beside it. Data only; text and pages render it.
 */
import type { Away, Garden } from '../garden/garden.ts';
import { addDays, type Day, eachDay, type Instant, latestOf, weekStart } from '../measures/days.ts';
import type { Supply } from '../practices/draft.ts';
import { gatheredSupplies, tasksOf } from '../schedule/entry-text.ts';
import type { Clash, Entry, Plan, PlannedTask } from '../schedule/plan.ts';
import { givenMinutes } from '../schedule/week-hours.ts';
import { timesAway } from '../schedule/work-days.ts';
import { type Closing, closingSoon, lapsedTasks } from './closing.ts';
import { unknownsOf } from './first-year.ts';
import { type OverloadTold, overloadsTold } from './overload-words.ts';
import { type Reader, readersPlan } from './reader.ts';
import { type ChangeGroup, changesTold, lastNearDay, recentChanges } from './recent-changes.ts';
import { toGetFor } from './to-get.ts';
import { type Triage, triageOf } from './triage.ts';
import { whoseWords } from './whose-words.ts';

/** A calendar entry with its tasks: work first, then the checks that ride along. */
export interface ListedEntry {
  entry: Entry;
  tasks: readonly PlannedTask[];
  /** Whose it is, in words; absent where it is everybody's, or the reader's own alone. */
  whose?: string;
}

/** A day with something on it. */
export interface ListedDay {
  day: Day;
  entries: readonly ListedEntry[];
}

/** One week of a garden, Monday to Sunday. Texts may hold marked amounts and days (measures/quantity). */
export interface WeekList {
  gardenId: string;
  gardenName: string;
  /** The member of the household it is for; absent, it is for all. */
  person?: string;
  /** When the last list went out to this reader, where one did. */
  since?: Instant;
  /** IANA zone that the hours of its tasks are read in. */
  timeZone: string;
  today: Day;
  monday: Day;
  sunday: Day;
  /** Days of the week that have something on them. */
  days: readonly ListedDay[];
  /** Minutes of work still to be done in the week, done in it, and kept for the garden on its days at home. */
  openMinutes: number;
  doneMinutes: number;
  keptMinutes: number;
  /** Minutes to do in the week for the whole household; as `openMinutes` where it is for all. */
  householdMinutes: number;
  /** Things to have at hand for what is still to be done this week, equal things added up. */
  supplies: readonly Supply[];
  /** Things that the week after wants bought or gathered before it begins, equal things added up. */
  toGet: readonly Supply[];
  /** Work of any day whose window closes within two weeks of today, or of Monday where that is later. */
  closing: readonly Closing[];
  /** What moved, came or went since the last list, or in the last seven days, and why. */
  changes: readonly ChangeGroup[];
  /** The same of days beyond the eight weeks after this one; only beside the current week. */
  laterChanges: readonly ChangeGroup[];
  /** Work whose window has closed. */
  lapsed: readonly PlannedTask[];
  /** The same in few lines but for what stands in the days of the list, what can still be saved first. */
  triage: Triage;
  /** Times away that touch the week. */
  away: readonly Away[];
  /** What is not known of a new garden, in sentences. */
  unknown: readonly string[];
  /** Of the week and the eight after it. */
  clashes: readonly Clash[];
  /** Weeks that want more than they give: this one, and beside the current week those ahead. */
  overloads: readonly OverloadTold[];
  /** The week after, by day. */
  next: readonly ListedDay[];
  /** The first day after the week that has something on it, when it is not in the week after. */
  comes?: ListedDay;
}

/**
 * The weekly list of the week a day falls in.
 *
 * @param weekOf any day of the week wanted
 * @param reader a person narrows it to that member's own: whole entries, as in feeds
 * @throws {RangeError} when the household has no such member
 */
export function weekList(whole: Plan, garden: Garden, weekOf: Day, { person, since }: Reader = {}): WeekList {
  const plan = readersPlan(whole, garden, person);
  const monday = weekStart(weekOf);
  const sunday = addDays(monday, 6);
  const days = listedDays(plan, monday, sunday).map((day) => withWhose(day, garden, person));
  const entries = days.flatMap((day) => day.entries);
  const toDo = entries.filter(isToDo);
  const next = listedDays(plan, addDays(monday, 7), addDays(monday, 13));
  const lapsed = lapsedTasks(plan);
  // What lapsed is told in its day or as a closed window: that it moved on is no further news.
  const missed = new Set(lapsed.map(({ key }) => key));
  const moved = recentChanges({ ...plan, changes: plan.changes.filter(({ key }) => !missed.has(key)) }, since);
  const changes = changesTold(moved, monday, plan.today);
  const comes = next.length > 0 ? undefined : firstAfter(plan, sunday);
  return {
    gardenId: garden.id,
    gardenName: garden.name,
    ...(person === undefined ? {} : { person }),
    ...(since === undefined ? {} : { since }),
    timeZone: garden.place.timeZone,
    today: plan.today,
    monday,
    sunday,
    days,
    openMinutes: minutesOf(toDo),
    doneMinutes: minutesOf(entries.filter(({ entry }) => entry.state === 'done')),
    keptMinutes: givenMinutes(monday, { ...garden.place, away: garden.away }),
    householdMinutes: minutesOf(listedDays(whole, monday, sunday).flatMap((day) => day.entries.filter(isToDo))),
    supplies: gatheredSupplies(toDo.flatMap(({ tasks }) => tasks.flatMap(({ supplies }) => supplies))),
    toGet: toGetFor(next.flatMap((day) => day.entries.filter(isToDo)).flatMap(({ tasks }) => tasks)),
    closing: closingSoon(plan, latestOf(plan.today, monday)),
    changes: changes.near,
    laterChanges: changes.later,
    lapsed,
    triage: triageOf(plan, new Set(entries.flatMap(({ entry }) => (entry.state === 'lapsed' ? entry.keys : [])))),
    away: timesAway(garden.away).filter(({ from, to }) => from <= sunday && to >= monday),
    unknown: unknownsOf(garden, plan.today),
    clashes: clashesNear(plan, monday),
    overloads: overloadsTold(whole, garden, monday).filter((overload) => concerns(overload, plan)),
    next,
    ...(comes === undefined ? {} : { comes }),
  };
}

/** Clashes of work that stands in a week or the eight after it, or is late; one whose work has no day is told in any. */
function clashesNear({ clashes, tasks, today }: Plan, monday: Day): Clash[] {
  const dayOf = new Map(tasks.map(({ key, day }) => [key, day]));
  const first = monday === weekStart(today) ? '' : monday;
  return clashes.filter(({ key }) => {
    const day = dayOf.get(key);
    return day === undefined || (day >= first && day <= lastNearDay(monday));
  });
}

/** Whether a week that wants too much holds work of a plan: a member is told of their own. */
function concerns({ canWait, cannotWait }: OverloadTold, plan: Plan): boolean {
  const keys = new Set([...canWait, ...cannotWait]);
  return plan.tasks.some(({ key }) => keys.has(key));
}

/** Whether an entry still asks for something: open, or late and worth doing. */
export function isToDo({ entry, tasks }: ListedEntry): boolean {
  return entry.state === 'open' || (entry.state === 'lapsed' && tasks.some(({ ifMissed }) => ifMissed === 'still do'));
}

/** Closing windows of work that is not in the week's own days: those of the others stand under their entries. */
export function closingElsewhere({ closing, monday, sunday }: WeekList): Closing[] {
  return closing.filter(({ day }) => day < monday || day > sunday);
}

/** Checks that ride along with the work of an entry; none when the entry is itself a check. */
export function ridingAlong({ tasks }: ListedEntry): PlannedTask[] {
  const [first, ...others] = tasks;
  return first?.weight === 'check' ? [] : others.filter(({ weight }) => weight === 'check');
}

function listedDays(plan: Plan, from: Day, to: Day): ListedDay[] {
  return eachDay(from, to)
    .map((day) => listedDay(plan, day))
    .filter(({ entries }) => entries.length > 0);
}

function withWhose({ day, entries }: ListedDay, garden: Garden, person: string | undefined): ListedDay {
  const named = entries.map((listed): ListedEntry => {
    const whose = listed.entry.state === 'done' ? '' : whoseWords(listed.tasks, garden, person);
    return whose === '' ? listed : { ...listed, whose };
  });
  return { day, entries: named };
}

function listedDay(plan: Plan, day: Day): ListedDay {
  const entries = plan.entries.filter((entry) => entry.day === day && entry.state !== 'skipped');
  return {
    day,
    entries: entries.map((entry) => ({ entry, tasks: tasksOf(plan, entry) })),
  };
}

function firstAfter(plan: Plan, day: Day): ListedDay | undefined {
  const later = plan.entries.filter((entry) => entry.day > day && entry.state !== 'skipped').map((entry) => entry.day);
  const [first] = later.sort();
  return first === undefined ? undefined : listedDay(plan, first);
}

function minutesOf(entries: readonly ListedEntry[]): number {
  return entries.reduce((sum, { entry }) => sum + entry.effortMinutes, 0);
}
