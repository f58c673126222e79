/**
 * A planned task as JSON: the fields of the plan, and each reason with its sentence.
 */
import { reasonSentence } from '../../schedule/explain.ts';
import type { PlannedTask } from '../../schedule/plan.ts';

/** A task for {@link writeJson}, which writes its texts in the reader's units. */
export function taskJson(task: PlannedTask): object {
  const { key, title, day, state, reasons, makes: _makes, ...rest } = task;
  return {
    key,
    title,
    day,
    state,
    ...rest,
    reasons: reasons.map((reason) => ({ ...reason, text: reasonSentence(reason) })),
  };
}
