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
  return keptOf(steward, path, before, await change());
}

/** The path of a page with the line of a change's own entry above it; bare where nothing was written down. */
export function keptOf(
  steward: Steward,
  path: string,
  { garden, plan: before }: Pick<GardenView, 'garden' | 'plan'>,
  made: ChangedPlan | undefined,
): string {
  if (made?.entry === undefined) return path;
  return keptAt(steward, path, { gardenId: garden.id, entry: made.entry, moves: movesBetween(before, made) });
}
