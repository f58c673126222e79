/**
 * A change made, with the way to the page that says so.
 */
import type { ChangedPlan, Steward } from '../../steward/doings/steward.ts';
import { keptAt } from './kept.tsx';

/** Makes a change of a garden; gives the path of a page with the line of its entry above it, or bare where none was made. */
export async function keptChange(
  steward: Steward,
  gardenId: string,
  path: string,
  change: () => Promise<ChangedPlan>,
): Promise<string> {
  return keptOf(steward, path, gardenId, await change());
}

/** The path of a page with the line of a change's own entry above it; bare where nothing was written down. */
export function keptOf(steward: Steward, path: string, gardenId: string, made: ChangedPlan | undefined): string {
  return made?.own === undefined ? path : keptAt(steward, path, { gardenId, ...made.own });
}
