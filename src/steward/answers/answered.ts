/**
 * What the ledger holds of an answer that was given from the mail.
 */
import type { Fact } from '../../garden/facts.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { standingEntries } from '../../garden/project.ts';
import type { TaskKey } from '../../practices/draft.ts';
import { leaningOn } from '../undo.ts';

/** The newest word on some tasks, where it still stands. */
export interface Answered {
  entry: LedgerEntry;
  /**
   * Whether this member said it, of nothing but these tasks, and nothing said since leans on it: then they may take it back
   * as lightly as it was said.
   */
  isTheirs: boolean;
}

/** The newest entry that says done, not yet or skip of one of some tasks. */
export function answeredOf(
  ledger: readonly LedgerEntry[],
  keys: ReadonlySet<TaskKey>,
  member: string,
): Answered | undefined {
  const entry = standingEntries(ledger).findLast(({ fact }) => answeredIn(fact).some((key) => keys.has(key)));
  if (entry === undefined) return undefined;
  const isOfThese = answeredIn(entry.fact).every((key) => keys.has(key));
  return { entry, isTheirs: entry.by === member && isOfThese && leaningOn(ledger, entry).length === 0 };
}

function answeredIn(fact: Fact): TaskKey[] {
  return 'tasks' in fact && ANSWERS.has(fact.kind) ? fact.tasks.map(({ key }) => key) : [];
}

const ANSWERS: ReadonlySet<string> = new Set(['tasks-done', 'put-off', 'tasks-skipped']);
