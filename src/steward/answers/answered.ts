/**
 * What the ledger holds of an answer that was given from the mail.
 */
import type { Fact } from '../../garden/facts.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { projectGarden, standingEntries } from '../../garden/project.ts';
import type { TaskKey } from '../../practices/draft.ts';
import { leaningOn } from '../ledger/undo.ts';

/** The newest word on some tasks, where it still stands. */
export interface Answered {
  entry: LedgerEntry;
  /**
   * Whether this member said it, of nothing but these tasks, and nothing said since leans on it: then they may take it back
   * as lightly as it was said.
   */
  isTheirs: boolean;
}

/**
 * The newest entry that says done, not yet or skip of one of some tasks.
 *
 * @param memberId whoever asks
 */
export function answeredOf(
  ledger: readonly LedgerEntry[],
  keys: ReadonlySet<TaskKey>,
  memberId: string,
): Answered | undefined {
  const entry = standingEntries(ledger).findLast(({ fact }) => answeredIn(fact).some((key) => keys.has(key)));
  if (entry === undefined) return undefined;
  const isOfThese = answeredIn(entry.fact).every((key) => keys.has(key));
  return { entry, isTheirs: isOfThese && isBy(ledger, entry, memberId) && leaningOn(ledger, entry).length === 0 };
}

function answeredIn(fact: Fact): TaskKey[] {
  return 'tasks' in fact && ANSWERS.has(fact.kind) ? fact.tasks.map(({ key }) => key) : [];
}

const ANSWERS: ReadonlySet<string> = new Set(['tasks-done', 'put-off', 'tasks-skipped']);

/** Whether a member said an entry: who was called by its name then. */
export function isBy(ledger: readonly LedgerEntry[], { entry, by }: LedgerEntry, memberId: string): boolean {
  const garden = projectGarden(ledger.filter((row) => row.entry < entry));
  return garden !== undefined && membersOf(garden).some(({ id, name }) => id === memberId && name === by);
}
