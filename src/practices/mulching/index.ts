/**
 * Mulching: no soil bare. Leaves or straw wherever no cover grows, on garlic over winter, on warm crops once the soil is
 * warm; drawn aside where small seed is sown.
 */
import type { Practice } from '../practice.ts';
import { bareBedDrafts } from './bare-beds.ts';
import { garlicDrafts } from './garlic.ts';
import { asideDrafts } from './residue-aside.ts';
import { mulchSentences } from './sentences.ts';
import { thinStandDrafts } from './thin-stands.ts';
import { warmCropDrafts } from './warm-crops.ts';

/** The mulching practice. */
export const mulching: Practice = {
  name: 'mulching',
  work(input, found) {
    const bare = bareBedDrafts(input, found);
    const others = input.garden.beds.flatMap((bed) => [
      ...garlicDrafts(input, bed),
      ...warmCropDrafts(input, bed),
      ...asideDrafts(input, found, bed, bare),
    ]);
    return { drafts: [...bare, ...thinStandDrafts(input, found), ...others] };
  },
  sentences: mulchSentences,
};
