/**
 * Ids of a garden's items: one that was given once is not given to something else.
 */
import type { LedgerEntry } from './ledger.ts';
import { ID_LISTS } from './stored-edit.ts';

/** Every id that a bed, planting, stand, bin or pile of a garden was ever told with, also where that was taken back. */
export function everyItemId(ledger: readonly LedgerEntry[]): ReadonlySet<string> {
  return new Set(ledger.flatMap(idsIn));
}

function idsIn({ fact }: LedgerEntry): string[] {
  switch (fact.kind) {
    case 'garden-imported':
      return ID_LISTS.flatMap((list) => fact.file[list].flatMap(({ id }) => id ?? []));
    case 'garden-mended':
      return fact.edits.flatMap((edit) => (edit.how === 'added' ? [edit.id] : []));
    case 'stand-planned':
      return [fact.standId];
    case 'plantings-planned':
      return fact.plantings.map(({ id }) => id);
    case 'tasks-done':
      return fact.tasks.flatMap(({ makes }) =>
        makes.flatMap((effect) => (effect.makes === 'stand-sown' ? [effect.standId] : [])),
      );
    default:
      return [];
  }
}
