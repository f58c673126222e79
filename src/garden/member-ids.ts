/**
 * Ids of the people of a household: each one's own for good, so that what hangs on one never comes to somebody else.
 */
import { gardenFileOf } from './export-garden-file.ts';
import { firstFree, type HeldFile, slug } from './ids.ts';
import type { LedgerEntry } from './ledger.ts';
import { projectGarden, standingEntries } from './project.ts';

/** Every id a member of a household ever had, also where the entry that told of them was taken back. */
export function everyMemberId(ledger: readonly LedgerEntry[]): ReadonlySet<string> {
  return new Set(
    ledger.flatMap(({ fact }) => {
      if (fact.kind === 'member-kept') return [fact.member.id];
      return fact.kind === 'garden-imported' ? (fact.file.household?.members ?? []).flatMap(({ id }) => id ?? []) : [];
    }),
  );
}

/** An id for somebody new, made from their name; a namesake of somebody before them gets another. */
export function newMemberId(ledger: readonly LedgerEntry[], name: string): string {
  return firstFree(slug(name), everyMemberId(ledger));
}

/** The garden of a ledger as a file to read the next one against; nothing where it holds none. */
export function heldFile(ledger: readonly LedgerEntry[]): HeldFile | undefined {
  const garden = projectGarden(ledger);
  if (garden === undefined) return undefined;
  const file = gardenFileOf(garden);
  const present = new Set((file.household?.members ?? []).map(({ id }) => id));
  const last = standingEntries(ledger).findLast(({ fact }) => fact.kind === 'garden-imported');
  const named = last?.fact.kind === 'garden-imported' ? (last.fact.file.household?.members ?? []) : [];
  return { ...file, formerMembers: named.filter(({ id }) => !present.has(id)), memberIds: everyMemberId(ledger) };
}
