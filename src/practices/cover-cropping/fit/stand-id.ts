/**
 * The id of a stand that is suggested or chosen for a gap.
 */
import type { OpenSpan } from '../open-spans.ts';
import type { SowingHalf } from '../sow-window.ts';

/** What grows in the gap, and when it is sown. */
interface Sown {
  season: number;
  half: SowingHalf;
  coverId: string;
}

/**
 * The id hangs on the gap and the sowing time: a suggestion cannot be made twice, and one that is chosen keeps its tasks
 * and their entries in every calendar.
 */
export function gapStandId({ bedId, before }: OpenSpan, { season, half, coverId }: Sown): string {
  const gapName = before ? `after-${before.planting.id}` : 'first';
  return `${bedId}-${gapName}-${season}-${half}-${coverId}`;
}
