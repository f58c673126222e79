/**
 * A task of the plan as the ledger keeps it once it is settled: done, or skipped.
 */
import type { DoneTask, SkippedTask } from '../../garden/facts.ts';
import type { Day } from '../../measures/days.ts';
import type { Change, Plan, PlannedTask } from '../../schedule/plan.ts';

/** What is known of the day a task was done on: the plan may have moved the task since. */
interface DoneOn {
  on: Day;
  changes: Plan['changes'];
}

/** The task as it stood, with what doing it makes true. */
export function doneTask(task: PlannedTask, makes: PlannedTask['makes'], { on, changes }: DoneOn): DoneTask {
  const { key, practice, kind, title, job, subject, effortMinutes, onceMinutes, window, reasons } = task;
  const plannedFor = plannedDayOn(task, { on, changes });
  return {
    ...{ key, practice, taskKind: kind, title, job, subject, effortMinutes, makes: [...makes] },
    ...(onceMinutes === undefined ? {} : { onceMinutes }),
    ...(plannedFor === undefined ? {} : { plannedFor }),
    lastDay: window.latest,
    because: [...reasons],
  };
}

/** The task as it stood when it was skipped. */
export function skippedTask({ key, title, subject, practice, day, state, reasons }: PlannedTask): SkippedTask {
  return { key, title, subject, practice, ...(state === 'open' ? { plannedFor: day } : {}), because: [...reasons] };
}

/**
 * The day a task was planned on, as the plan stood when the day it was done began: work that is marked done a day late has
 * been moved on by then. Work that came into the plan on that very day has the day it came in for. Nothing where it had no
 * day left, or was not in the plan yet.
 */
function plannedDayOn({ key, day, state }: PlannedTask, { on, changes }: DoneOn): Day | undefined {
  const own = changes.filter((change) => change.key === key && change.kind !== 'reworded');
  const first = own.findLast((change) => toldOn(change) >= on);
  if (first === undefined) return state === 'open' ? day : undefined;
  return first.kind === 'added' && toldOn(first) === on ? first.to : first.from;
}

function toldOn({ on, at }: Change): Day {
  return on ?? at.slice(0, 'YYYY-MM-DD'.length);
}
