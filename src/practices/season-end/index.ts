/**
 * The season's end: hoses and tools before the hard freeze, leaves while they fall, room for the scraps of winter.
 */
import type { Practice } from '../practice.ts';
import { seasonsAround } from '../seasons.ts';
import { closeDownDrafts } from './close-down-draft.ts';
import { leavesDrafts } from './leaves-draft.ts';
import { seasonEndSentences } from './sentences.ts';
import { winterBinDrafts } from './winter-bin-draft.ts';

/** The season-end practice. */
export const seasonEnd: Practice = {
  name: 'season-end',
  work(input) {
    const seasons = seasonsAround(input.climate, input.garden.startedOn, input.until);
    const drafts = [closeDownDrafts, leavesDrafts, winterBinDrafts];
    return { drafts: seasons.flatMap((season) => drafts.flatMap((draft) => draft(input, season))) };
  },
  sentences: seasonEndSentences,
};
