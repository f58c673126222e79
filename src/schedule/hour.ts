/**
 * The hour of work that has one. It belongs to the one day of its window: pinned to another day the work loses it.
 */
import type { Day } from '../measures/days.ts';
import type { TaskDraft } from '../practices/draft.ts';

/** A span of minutes from a moment on. */
export type Hour = NonNullable<TaskDraft['at']>;

/** The hour a draft keeps on the day it was put on, if any. */
export function hourOn({ at, window }: Pick<TaskDraft, 'at' | 'window'>, day: Day): Hour | undefined {
  return window.earliest === day ? at : undefined;
}

/** An hour as text that differs exactly when the hour does; empty where there is none. */
export function hourName(hour: Hour | undefined): string {
  return hour === undefined ? '' : `${hour.from} ${hour.minutes} min`;
}
