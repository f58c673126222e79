/**
 * What goes into a compost pile: how rich, how wet, how heavy.
 *
 * For every row with a ratio, nitrogen times the ratio is the carbon given. Where the published pair of nitrogen and
 * ratio would make more carbon than a plant can hold, carbon is fixed at 45 percent of dry matter (50 for leaves, wood
 * and paper) and nitrogen is worked out from it. Ash and eggshells are no part of the carbon arithmetic; tea and mixed
 * yard trimmings have no ratio that anybody published.
 */

import { HERBICIDE } from './feedstocks/cautions.ts';
import { greenFeedstocks } from './feedstocks/greens.ts';
import { leafAndStrawFeedstocks } from './feedstocks/leaves-and-straw.ts';
import { manureFeedstocks } from './feedstocks/manures.ts';
import { otherFeedstocks } from './feedstocks/others.ts';
import { woodAndPaperFeedstocks } from './feedstocks/wood-and-paper.ts';
import type { Feedstock } from './shapes/feedstock.ts';

/** Every feedstock of the handbook. */
export const feedstocks: readonly Feedstock[] = [
  ...leafAndStrawFeedstocks,
  ...woodAndPaperFeedstocks,
  ...greenFeedstocks,
  ...manureFeedstocks,
  ...otherFeedstocks,
];

/** Parts of browns to one of greens in a pile, by volume as they are gathered. Common practice. */
export const BROWNS_TO_GREENS = 2;

const byId: ReadonlyMap<string, Feedstock> = new Map(feedstocks.map((material) => [material.id, material]));

/**
 * The feedstock with an id.
 *
 * @throws RangeError when the handbook has none of that id
 */
export function feedstockById(id: string): Feedstock {
  const found = byId.get(id);
  if (found === undefined)
    throw new RangeError(`No feedstock is called "${id}" in the handbook. One that is: "straw_oat".`);
  return found;
}

/** Whether a material of unknown history may carry weedkiller that outlives composting. */
export function mayHoldWeedkiller({ cautions }: Feedstock): boolean {
  return cautions.includes(HERBICIDE);
}
