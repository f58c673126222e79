/**
 * Weeks of the near future that want more than the household gives, named with what can wait and what cannot.
 */
import type { DoneMark } from '../garden/garden.ts';
import { addDays, type Day, earliestOf, weekStart } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import { LOOK_AHEAD_WEEKS } from './day-choice.ts';
import type { Entry, Overload, PlannedTask } from './plan.ts';
import { closedAfter, dayOfTasks } from './room.ts';
import { givenMinutes, type Hours } from './week-hours.ts';
import { type OrderedWindow, orderedWindows } from './windows.ts';
import { leastUnfitness } from './work-days.ts';

/** What naming overloads looks at. */
export interface OverloadInput {
  today: Day;
  hours: Hours;
  entries: readonly Entry[];
  tasks: readonly PlannedTask[];
  done: readonly DoneMark[];
}

/**
 * The weeks from this one on, eight in all, whose entries take longer than the hours given and that still hold work to
 * do. What was done in a week counts in it.
 */
export function overloadsOf(input: OverloadInput): Overload[] {
  const { today, hours, entries } = input;
  const overfull = Array.from({ length: LOOK_AHEAD_WEEKS }, (_, week) => addDays(weekStart(today), 7 * week)).flatMap(
    (monday) => {
      const asked = entries.filter((entry) => weekStart(entry.day) === monday && isCounted(entry, input));
      const wantedMinutes = asked.reduce((sum, { effortMinutes }) => sum + effortMinutes, 0);
      const week = { monday, wantedMinutes, givenMinutes: givenMinutes(monday, hours) };
      const keys = new Set(asked.filter(({ state }) => state !== 'done').flatMap((entry) => entry.keys));
      return wantedMinutes > week.givenMinutes && keys.size > 0 ? [{ week, keys }] : [];
    },
  );
  if (overfull.length === 0) return [];
  const until = lastDays(input);
  return overfull.map(({ week, keys }) => ({ ...week, ...parted(week.monday, keys, until, input) }));
}

/** Whether an entry takes or took time: what is past mending does not. */
function isCounted({ state, keys }: Entry, { tasks }: OverloadInput): boolean {
  if (state === 'open' || state === 'done') return true;
  return state === 'lapsed' && tasks.some(({ key, ifMissed }) => ifMissed === 'still do' && keys.includes(key));
}

/** The last day each open task can be put off to without harm to what waits for it. */
function lastDays({ tasks, done }: OverloadInput): ReadonlyMap<TaskKey, Day> {
  const open = tasks.filter(({ state }) => state === 'open');
  const windows: ReadonlyMap<TaskKey, OrderedWindow> = orderedWindows(open);
  const dayOf = dayOfTasks(done, new Map(tasks.map((task) => [task.key, task])));
  return new Map(open.map((task) => [task.key, closedAfter(task, windows.get(task.key) ?? task.window, dayOf).latest]));
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
  const next = addDays(monday, 7);
  const waiting = counted.filter(({ key, pinned }) => {
    const to = lastDay.get(key) ?? monday;
    return !pinned && to >= next && leastUnfitness({ from: next, to: earliestOf(to, addDays(next, 365)) }, hours) < 2;
  });
  const canWait = waiting.map(({ key }) => key);
  return {
    canWait,
    cannotWait: counted.map(({ key }) => key).filter((key) => !canWait.includes(key)),
    until: Object.fromEntries(canWait.map((key) => [key, lastDay.get(key) ?? monday])),
  };
}
