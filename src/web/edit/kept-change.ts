/**
 * A change made, with the way to the page that says so.
 */
import type { Plan } from '../../schedule/plan.ts';
import type { Steward } from '../../steward/steward.ts';
import { movesBetween } from '../../steward/undo.ts';
import { keptAt } from './kept.tsx';

/** Makes a change of a garden; gives the path of a page with the line of its entry above it, or bare where none was made. */
export async function keptChange(
  steward: Steward,
  gardenId: string,
  path: string,
  change: () => Promise<Plan>,
): Promise<string> {
  const before = await steward.view(gardenId);
  const plan = await change();
  const { ledger } = await steward.view(gardenId);
  if (ledger.length === before.ledger.length) return path;
  const entry = ledger.at(-1)?.entry ?? 0;
  return keptAt(steward, path, { gardenId, entry, moves: movesBetween(before.plan, plan) });
}
