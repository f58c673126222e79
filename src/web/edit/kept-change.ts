/**
 * A change made, with the way to the page that says so.
 */
import type { ChangedPlan, GardenView, Steward } from '../../steward/steward.ts';
import { movesBetween } from '../../steward/undo.ts';
import { keptAt } from './kept.tsx';

/** Makes a change of a garden; gives the path of a page with the line of its entry above it, or bare where none was made. */
export async function keptChange(
  steward: Steward,
  gardenId: string,
  path: string,
  change: () => Promise<ChangedPlan>,
): Promise<string> {
  const before = await steward.view(gardenId);
  const plan = await change();
  if (plan.entry === undefined) return path;
  return keptAt(steward, path, { gardenId, entry: plan.entry, moves: movesBetween(before.plan, plan) });
}

/** The path of a page with the line of what was made since a garden was read above it; bare where nothing was. */
export async function keptSince(
  steward: Steward,
  path: string,
  { garden, plan: before, ledger: known }: Pick<GardenView, 'garden' | 'plan' | 'ledger'>,
): Promise<string> {
  const { ledger, plan } = await steward.view(garden.id);
  if (ledger.length === known.length) return path;
  const entry = ledger.at(-1)?.entry ?? 0;
  return keptAt(steward, path, { gardenId: garden.id, entry, moves: movesBetween(before, plan) });
}
