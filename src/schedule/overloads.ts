/**
 * Weeks of the near future that want more than the household gives, named with what can wait and what cannot.
 */
import type { DoneMark } from '../garden/garden.ts';
import { addDays, type Day, latestOf, weekStart } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import { LOOK_AHEAD_WEEKS } from './day-choice.ts';
import { effortTogether } from './effort-together.ts';
import { lastDayInSight } from './place.ts';
import type { Entry, Overload, PlannedTask } from './plan.ts';
import { closedAfter, dayOfTasks, placeOf } from './room.ts';
import { givenMinutes, type Hours, leftMinutes } from './week-hours.ts';
import { daysLeft, orderedWindows } from './windows.ts';
import { homeSpan, leastUnfitness } from './work-days.ts';

/** What naming overloads looks at. */
interface OverloadInput {
  today: Day;
  hours: Hours;
  entries: readonly Entry[];
  tasks: readonly PlannedTask[];
  done: readonly DoneMark[];
}

/**
 * The weeks from this one on, eight in all, whose entries take longer than the hours given and that still hold work to
 * do. What was done in a week counts in it; of the week of today only what is left of it does.
 */
export function overloadsOf(input: OverloadInput): Overload[] {
  const overfull = Array.from({ length: LOOK_AHEAD_WEEKS }, (_, week) =>
    addDays(weekStart(input.today), 7 * week),
  ).flatMap((monday) => {
    const asked = entriesAsked(monday, input);
    const wantedMinutes = asked.reduce((sum, { effortMinutes }) => sum + effortMinutes, 0);
    const week = { monday, wantedMinutes, givenMinutes: hoursLeft(monday, input) };
    const keys = new Set(asked.filter(({ state }) => state !== 'done').flatMap((entry) => entry.keys));
    return wantedMinutes > week.givenMinutes && keys.size > 0 ? [{ week, keys }] : [];
  });
  if (overfull.length === 0) return [];
  const until = lastDays(input);
  return overfull.map(({ week, keys }) => ({ ...week, ...parted(week.monday, keys, until, input) }));
}

/** The minutes a week would want were some of its tasks put off, with the checks that ride along with nothing else. */
export function minutesWithout(
  putOff: ReadonlySet<TaskKey>,
  monday: Day,
  plan: Pick<OverloadInput, 'today' | 'entries' | 'tasks'>,
): number {
  return entriesAsked(monday, plan).reduce((sum, { keys, effortMinutes }) => {
    if (!keys.some((key) => putOff.has(key))) return sum + effortMinutes;
    const tasks = plan.tasks.filter(({ key }) => keys.includes(key));
    const left = tasks.filter(({ key }) => !putOff.has(key));
    const going = new Set(tasks.filter(({ key }) => putOff.has(key)).map(placeOf));
    const staying = new Set(left.filter(({ weight }) => weight !== 'check').map(placeOf));
    return sum + effortTogether(left.filter((task) => staying.has(placeOf(task)) || !going.has(placeOf(task))));
  }, 0);
}

/** The entries of a week that take or took time in it, from today on. */
function entriesAsked(monday: Day, plan: Pick<OverloadInput, 'today' | 'entries' | 'tasks'>): Entry[] {
  const from = latestOf(monday, plan.today);
  return plan.entries.filter((entry) => weekStart(entry.day) === monday && entry.day >= from && isCounted(entry, plan));
}

/** What a week gives; of the week of today what its days to come give, and no more than work done in it has left. */
function hoursLeft(monday: Day, { today, hours, entries }: OverloadInput): number {
  const given = givenMinutes(monday, hours);
  if (monday !== weekStart(today)) return given;
  const before = entries.filter(({ day, state }) => state === 'done' && day >= monday && day < today);
  const spent = before.reduce((sum, { effortMinutes }) => sum + effortMinutes, 0);
  return Math.min(leftMinutes(today, hours), Math.max(0, given - spent));
}

/** Whether an entry takes or took time: what is past mending does not. */
function isCounted({ state, keys }: Entry, { tasks }: Pick<OverloadInput, 'tasks'>): boolean {
  if (state === 'open' || state === 'done') return true;
  return tasks.some((task) => isLate(task) && keys.includes(task.key));
}

/** Whether a task is late and worth doing all the same. */
function isLate({ state, ifMissed }: PlannedTask): boolean {
  return state === 'lapsed' && ifMissed === 'still do';
}

/**
 * The last day each task to do can be put off to without harm to what waits for it, found as its day was; late work has
 * its days until it is let go.
 */
function lastDays({ today, hours, tasks, done }: OverloadInput): ReadonlyMap<TaskKey, Day> {
  const toDo = tasks
    .filter((task) => task.state === 'open' || isLate(task))
    .map((task) => (isLate(task) ? { ...task, window: { ...task.window, latest: lastDayInSight(task) } } : task));
  const pins = new Map(toDo.filter(({ pinned }) => pinned).map(({ key, day }) => [key, day]));
  const windows = orderedWindows(toDo, ({ key, window }) =>
    daysLeft(window, pins.get(key), { today, away: hours.away }),
  );
  const dayOf = dayOfTasks(done, new Map(tasks.map((task) => [task.key, task])));
  return new Map(toDo.map((task) => [task.key, closedAfter(task, windows.get(task.key) ?? task.window, dayOf).latest]));
}

type Parted = Pick<Overload, 'canWait' | 'cannotWait' | 'until'>;

/** The work of a week that has a day at home in a later one, and the rest. What rides along goes with its work. */
function parted(
  monday: Day,
  keys: ReadonlySet<TaskKey>,
  lastDay: ReadonlyMap<TaskKey, Day>,
  { tasks, hours }: OverloadInput,
): Parted {
  const here = tasks.filter(({ key }) => keys.has(key));
  const lots = new Set(here.filter(({ weight }) => weight !== 'check').map(({ lotId }) => lotId));
  const counted = here.filter(({ weight, lotId }) => weight !== 'check' || !lots.has(lotId));
  const from = addDays(monday, 7);
  const until = Object.fromEntries(
    counted.flatMap(({ key, pinned }) => {
      const to = lastDay.get(key) ?? monday;
      if (pinned || to < from || leastUnfitness({ from, to }, hours) === 2) return [];
      return [[key, homeSpan({ from, to }, hours.away).to]];
    }),
  );
  return {
    canWait: counted.map(({ key }) => key).filter((key) => key in until),
    cannotWait: counted.map(({ key }) => key).filter((key) => !(key in until)),
    until,
  };
}
