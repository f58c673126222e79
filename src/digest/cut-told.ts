/**
 * When a cover that is planned or stands is cut: from its first day to its last, and what closes that.
 */
import type { Reason, TaskKey, Window } from '../practices/draft.ts';
import { cutKey } from '../practices/keys.ts';
import type { Plan } from '../schedule/plan.ts';

/** The cut of a stand. */
export interface CutTold {
  key: TaskKey;
  window: Window;
  /** What closes the window: its flowers, what follows, and which of the two decides. */
  closes: readonly Reason[];
}

/** The cut of a stand as the plan has it; nothing where none is to come. */
export function cutTold({ tasks }: Pick<Plan, 'tasks'>, standId: string): CutTold | undefined {
  const task = tasks.find(({ key, state }) => key === cutKey(standId) && state !== 'done');
  return task && { key: task.key, window: task.window, closes: task.reasons };
}
