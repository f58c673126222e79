/**
 * What had been planned of work when it was marked: the day the plan had given it, and why.
 */
import type { Fact } from '../../garden/facts.ts';
import type { Day } from '../../measures/days.ts';
import type { Reason, TaskKey } from '../../practices/draft.ts';
import { hasSentence } from '../../schedule/explain.ts';

/** A task as the plan had it when it was marked. */
export interface PlannedThen {
  key: TaskKey;
  title: string;
  /** Absent where it had no day left. */
  day: Day | undefined;
  /** Empty in entries from before reasons were kept, and of rules this program has no words for. */
  reasons: readonly Reason[];
}

/** The tasks that a fact settles. */
export function plannedThen(fact: Fact): PlannedThen[] {
  return settledIn(fact).map(({ key, title, plannedFor, because = [] }) => ({
    ...{ key, title, day: plannedFor },
    reasons: (because as Reason[]).filter(hasSentence),
  }));
}

function settledIn(fact: Fact) {
  switch (fact.kind) {
    case 'tasks-done':
    case 'tasks-skipped':
      return fact.tasks;
    case 'stand-looked':
    case 'regrowth-seen':
      return fact.task === undefined ? [] : [fact.task];
    default:
      return [];
  }
}
