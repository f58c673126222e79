/**
 * What is said of tasks of the plan: done, skipped, put off, pinned to a day or set free again.
 */
import type { Fact } from '../../garden/facts.ts';
import { addDays, type Day, isDay } from '../../measures/days.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { Steward } from '../doings/steward.ts';
import type { VersionedView } from '../planning/planner.ts';
import type { Accept } from './accept.ts';
import { skippedTask } from './done-task.ts';
import { doneFacts, MARK_DAYS, openTasks, refusal } from './marking.ts';
import { putOffFacts } from './put-off.ts';

/** What a steward does with tasks. */
export function taskMarksIn(accept: Accept): Pick<Steward, 'markDone' | 'skip' | 'putOff' | 'pin' | 'unpin'> {
  return {
    markDone: (gardenId, keys, on, by, used = {}) => accept(gardenId, by, (view) => doneFacts(view, keys, on, used)),
    skip: (gardenId, keys, by) =>
      accept(gardenId, by, ({ plan, garden }) => {
        const tasks = openTasks({ plan, garden }, keys).map(skippedTask);
        return [{ kind: 'tasks-skipped', on: plan.today, tasks }];
      }),
    putOff: (gardenId, keys, past, by) => accept(gardenId, by, (view) => putOffFacts(view, keys, past)),
    pin: (gardenId, key, day, by) => accept(gardenId, by, (view) => [pinFact(view, key, day)]),
    unpin: (gardenId, key, by) => accept(gardenId, by, (view) => unpinFacts(view, key)),
  };
}

function pinFact(view: VersionedView, key: TaskKey, day: Day): Fact {
  const { plan } = view;
  if (!isDay(day) || day < plan.today || day > addDays(plan.today, MARK_DAYS)) {
    const mend = `Give a day of the coming year from today on, such as ${plan.today}.`;
    throw refusal('the day to pin to', `"${day}" cannot be used.`, mend);
  }
  const [task] = openTasks(view, [key]);
  return { kind: 'day-pinned', key, title: task?.title ?? key, day };
}

function unpinFacts(view: VersionedView, key: TaskKey): Fact[] {
  return openTasks(view, [key]).map(({ title }) => ({ kind: 'day-unpinned', key, title }));
}
