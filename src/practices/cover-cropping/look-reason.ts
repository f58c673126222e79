/**
 * What was seen of a young stand, as a reason for what follows.
 */
import type { StandLook } from '../../garden/garden.ts';
import type { Reason } from '../draft.ts';
import { COVERED_SHARE, COVERED_WORDS } from '../stand-cover.ts';

/** What a look found, and the share of the ground that is counted for it. */
export function lookReason({ on, covered, weedy }: StandLook): Reason {
  return {
    rule: 'cover-look.seen',
    saw: {
      on,
      covered: COVERED_WORDS[covered],
      percent: Math.round(100 * COVERED_SHARE[covered]),
      weeds: weedy ? 'many' : 'few',
    },
    source: 'house default',
  };
}
