/**
 * A task of the plan as the ledger keeps it once it is done.
 */
import type { DoneTask } from '../garden/facts.ts';
import type { PlannedTask } from '../schedule/plan.ts';

/** The task as it stood, with what doing it makes true. */
export function doneTask(task: PlannedTask, makes: PlannedTask['makes']): DoneTask {
  const { key, practice, kind, title, job, subject, effortMinutes } = task;
  return { key, practice, taskKind: kind, title, job, subject, effortMinutes, makes: [...makes] };
}
