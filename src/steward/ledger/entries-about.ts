/**
 * The entries of a ledger that tell of one bed or one pile.
 */
import type { Fact } from '../../garden/facts.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { touchedBy } from './touched-by.ts';
import { takenEntry } from './undo.ts';

/** What is asked after. */
export interface AskedAfter {
  type: 'bed' | 'pile';
  id: string;
}

/**
 * The entries about a bed, with all that grows in it, or about a pile, and those that took such entries back. Garden files
 * tell of everything and are left out.
 */
export function entriesAbout(
  ledger: readonly LedgerEntry[],
  { plantings, stands }: Pick<Garden, 'plantings' | 'stands'>,
  { type, id }: AskedAfter,
): LedgerEntry[] {
  const grown = type === 'pile' ? [] : [...plantings, ...stands].filter(({ bedId }) => bedId === id);
  const ids = new Set([id, ...grown.map((each) => each.id)]);
  const inKey = new Set([`${type}:${id}`, ...grown.flatMap((each) => [`planting:${each.id}`, `stand:${each.id}`])]);
  return ledger.filter((entry) => {
    const { fact } = takenEntry(ledger, entry);
    const touched = touchedBy(fact);
    if (touched === 'all') return false;
    return [...touched, ...placesIn(fact)].some(
      (name) => ids.has(name) || name.split('/').some((part) => inKey.has(part)),
    );
  });
}

/** Beds and piles that done or skipped tasks name beside what they are about. */
function placesIn(fact: Fact): string[] {
  if (fact.kind !== 'tasks-done' && fact.kind !== 'tasks-skipped') return [];
  return fact.tasks.flatMap((task) => [
    ...(task.subject !== undefined && 'bedId' in task.subject ? [task.subject.bedId] : []),
    ...('makes' in task ? task.makes.flatMap((effect) => ('pileIds' in effect ? (effect.pileIds ?? []) : [])) : []),
  ]);
}
