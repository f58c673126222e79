/**
 * The season's end: hoses and tools before the hard freeze, leaves while they fall, room for the scraps of winter.
 */
import type { Garden } from '../../garden/garden.ts';
import type { HeapSupply } from '../compost-balance.ts';
import type { Practice } from '../practice.ts';
import { seasonsAround } from '../seasons.ts';
import { closeDownDrafts } from './close-down-draft.ts';
import { leavesDrafts } from './leaves-draft.ts';
import { seasonEndSentences } from './sentences.ts';
import { winterBinDrafts } from './winter-bin-draft.ts';

/** The season-end practice. */
export const seasonEnd: Practice = {
  name: 'season-end',
  work(all, { compostBalance }) {
    const input = { ...all, garden: withoutUsedUp(all.garden, compostBalance?.heaps) };
    const seasons = seasonsAround(input.climate, input.garden.startedOn, input.until);
    const drafts = [closeDownDrafts, leavesDrafts, winterBinDrafts];
    return { drafts: seasons.flatMap((season) => drafts.flatMap((draft) => draft(input, season))) };
  },
  sentences: seasonEndSentences,
};

/** The garden without finished piles of which nothing is left: their bins are empty. */
function withoutUsedUp(garden: Garden, heaps: readonly HeapSupply[] | undefined): Garden {
  if (heaps === undefined) return garden;
  const left = new Set(heaps.filter(({ what }) => what === 'pile').map(({ of }) => of));
  return { ...garden, piles: garden.piles.filter(({ id, finishedOn }) => finishedOn === undefined || left.has(id)) };
}
