/**
 * Mends for tests: as the steward would keep them, and the garden they leave.
 */
import { type Edit, editedFile } from '../../src/garden/edit.ts';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { everyItemId } from '../../src/garden/item-ids.ts';
import { storedEdits } from '../../src/garden/kept-edits.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { heldFile } from '../../src/garden/member-ids.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import type { Day } from '../../src/measures/days.ts';
import { gardenOf } from './example-garden.ts';

/** The fact of edits made to the garden of a ledger. */
export function mendOf(ledger: readonly LedgerEntry[], edits: readonly Edit[]): Fact {
  const before = gardenFileOf(gardenOf(ledger));
  const taken = everyItemId(ledger);
  const { file, refs } = editedFile(before, edits, taken);
  const checked = checkGardenFile(file, heldFile(ledger));
  return { kind: 'garden-mended', edits: storedEdits({ before, edits, refs, taken }, checked) };
}

/** A ledger with one more fact, told on a day. */
export function withFact(ledger: readonly LedgerEntry[], recordedOn: Day, fact: Fact): LedgerEntry[] {
  const entry = (ledger.at(-1)?.entry ?? 0) + 1;
  return [...ledger, { entry, recordedAt: `${recordedOn}T18:00:00.000Z`, recordedOn, by: 'household', fact }];
}

/** A ledger with its garden mended. */
export function mended(ledger: readonly LedgerEntry[], recordedOn: Day, ...edits: Edit[]): LedgerEntry[] {
  return withFact(ledger, recordedOn, mendOf(ledger, edits));
}
