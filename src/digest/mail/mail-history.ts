/**
 * Since when each member has had the weekly list by mail.
 */
import type { Fact } from '../../garden/facts.ts';
import { membersOf } from '../../garden/household-changes.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { projectGarden } from '../../garden/project.ts';
import type { Instant } from '../../measures/days.ts';

/**
 * When the mail that each member has now began, by the member's id. Other settings of it, another name and a new garden
 * file do not begin it anew. Mail that was stopped, or whose member had left, begins when it is there again, though that
 * come of taking the stop back: nobody waited for the lists in between.
 */
export function mailSince(ledger: readonly LedgerEntry[]): ReadonlyMap<string, Instant> {
  const told = entriesOfPeople(ledger);
  let since: ReadonlyMap<string, Instant> = new Map();
  told.forEach(({ recordedAt }, at) => {
    const garden = projectGarden(told.slice(0, at + 1));
    const mailed = garden === undefined ? [] : membersOf(garden).filter(({ mail }) => mail !== undefined);
    since = new Map(mailed.map(({ id }) => [id, since.get(id) ?? recordedAt]));
  });
  return since;
}

/** The entries that tell of people, and those that take one of them back. */
function entriesOfPeople(ledger: readonly LedgerEntry[]): LedgerEntry[] {
  const theirs = new Set<number>();
  return ledger.filter(({ entry, fact }) => {
    const is = fact.kind === 'entry-undone' ? theirs.has(fact.entry) : OF_PEOPLE.has(fact.kind);
    if (is) theirs.add(entry);
    return is;
  });
}

const OF_PEOPLE: ReadonlySet<Fact['kind']> = new Set(['garden-imported', 'member-kept', 'member-gone', 'mail-stopped']);
