/**
 * Work that was answered with "not yet".
 */
import { addDays, type Day, latestOf } from '../measures/days.ts';
import type { Reason, TaskDraft, TaskKey } from '../practices/draft.ts';
import type { PlannedTask } from './plan.ts';

/** A draft that was put off past a day: its window begins the day after, as long as it lasts. Others stay as they are. */
export function putOffIn(draft: TaskDraft, putOff: Readonly<Record<TaskKey, Day>>): TaskDraft {
  const past = putOff[draft.key];
  const { earliest, preferred, latest } = draft.window;
  if (past === undefined || past < earliest || past >= latest) return draft;
  const from = addDays(past, 1);
  const because: Reason = { rule: 'schedule.put-off', saw: { day: past }, source: "the garden's own plan" };
  return {
    ...draft,
    window: { earliest: from, preferred: latestOf(preferred, from), latest },
    reasons: [because, ...draft.reasons],
  };
}

/** Whether a task is still to be done and some day after this one will do for it. */
export function canWait({ state, window }: Pick<PlannedTask, 'state' | 'window'>, past: Day): boolean {
  return state === 'open' && past < window.latest;
}

/** The day a task is put off past when somebody says "not yet" today: the day it stands on, or today where that is later. */
export function putOffPast({ day }: Pick<PlannedTask, 'day'>, today: Day): Day {
  return latestOf(day, today);
}
