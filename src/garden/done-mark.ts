/**
 * A task marked done, as the garden keeps it.
 */
import type { Day } from '../measures/days.ts';
import type { DoneTask } from './facts.ts';
import type { DoneMark } from './garden.ts';
import { withoutAbsent } from './without-absent.ts';

/** The mark of a task that was done on a day, with the ledger's entry that tells of it. */
export function doneMark(task: DoneTask, on: Day, entry: number): DoneMark {
  const { key, practice, taskKind, title, job, subject, effortMinutes, onceMinutes } = task;
  return withoutAbsent({ key, on, practice, kind: taskKind, title, job, subject, effortMinutes, onceMinutes, entry });
}
