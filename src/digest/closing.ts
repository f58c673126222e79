/**
 * Work whose window is about to close, and work whose window has closed.
 */
import { addDays, type Day, daysBetween } from '../measures/days.ts';
import type { TaskKey } from '../practices/draft.ts';
import { titleOf } from '../schedule/entry-text.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';

/** Days ahead within which a closing window is named. House default: this weekly list and the next. */
const CLOSING_SOON_DAYS = 14;

/** Work of one calendar entry whose window closes on one day. */
export interface Closing {
  keys: readonly TaskKey[];
  /** The day it is planned for. */
  day: Day;
  title: string;
  /** The last day of its window. */
  latest: Day;
  /** Days from today. */
  daysLeft: number;
}

/** Open work whose window closes within two weeks of a day, soonest first; checks only ride along and are not named. */
export function closingSoon(plan: Plan, from: Day): Closing[] {
  const limit = addDays(from, CLOSING_SOON_DAYS);
  const groups = new Map<string, PlannedTask[]>();
  for (const task of plan.tasks) {
    const { latest } = task.window;
    if (task.state !== 'open' || task.weight === 'check' || latest < from || latest > limit) continue;
    const name = `${latest} ${task.lotId}`;
    groups.set(name, [...(groups.get(name) ?? []), task]);
  }
  return [...groups.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, tasks]) => {
      const [first] = tasks;
      if (first === undefined) return [];
      const { day, window } = first;
      const daysLeft = daysBetween(plan.today, window.latest);
      return [
        {
          keys: tasks.map(({ key }) => key),
          day,
          title: titleOf(tasks),
          latest: window.latest,
          daysLeft,
        },
      ];
    });
}

/** What has lapsed and is still worth naming, the latest closed first. */
export function lapsedTasks(plan: Plan): PlannedTask[] {
  return plan.tasks
    .filter(({ state }) => state === 'lapsed')
    .sort((a, b) => compare(b.window.latest, a.window.latest) || compare(a.key, b.key));
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
