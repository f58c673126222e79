/**
 * What a cut stand leaves behind: regrowth to look for and finish, residue to let settle.
 */
import type { CropSpan } from '../bed-timeline.ts';
import { type CoverPart, waitDaysOf } from '../covers.ts';
import { endedByOneCut } from './bloom.ts';

/** Days after a cut when regrowth shows. House default within the 10–14 days of practice. */
export const REGROWTH_DAYS = { low: 10, high: 14 } as const;
/** Days of sheet that finish regrowth (cover:S39: three weeks worked, one did not). */
export const SHEET_DAYS = { low: 21, high: 28 } as const;
/** Days between cutting one cover and sowing the next, where the first does not grow again (cover:S5). */
const COVER_AFTER_COVER_DAYS = 7;

/** Days from a cut before bloom to a bed free of regrowth: long enough to see it, then the shortest sheet. */
const FINISH_DAYS = REGROWTH_DAYS.low + SHEET_DAYS.low;

/** Whether some part of a stand would grow again after its cut. */
export function growsAgain(parts: readonly CoverPart[]): boolean {
  return parts.some(({ cover }) => cover.regrows === 'yes' && !endedByOneCut(cover));
}

/** Days that fresh residue wants to settle before a crop; before an unknown one as before small seed. */
export function waitBefore(parts: readonly CoverPart[], next: CropSpan | undefined): number {
  const wait = waitDaysOf(parts);
  return next !== undefined && !waitsAsSeed(next) ? wait.transplant : wait.smallSeed;
}

/** Seed sown in place that is small, or that seedcorn maggot eats; sets, cloves, tubers and plants wait less. */
function waitsAsSeed({ planting, crop }: CropSpan): boolean {
  return planting.start.how === 'sow' && (crop.smallSeed || crop.seedcornMaggot === true);
}

/** Days between cutting a stand and sowing or setting out a crop in its place. */
export function settleDays(parts: readonly CoverPart[], next: CropSpan | undefined): number {
  return Math.max(waitBefore(parts, next), growsAgain(parts) ? FINISH_DAYS : 0);
}

/** Days between cutting a stand and sowing another cover in its place. */
export function daysToNextCover(parts: readonly CoverPart[]): number {
  return growsAgain(parts) ? FINISH_DAYS : COVER_AFTER_COVER_DAYS;
}
