/**
 * What a cut stand leaves behind: regrowth to look for and finish, residue to let settle.
 */

import type { Day } from '../../measures/days.ts';
import { type AfterCut, freeFrom, growsAgain, REGROWTH_DAYS, SHEET_DAYS } from '../after-cut.ts';
import type { CropSpan } from '../bed-timeline.ts';
import { type CoverPart, waitDaysOf } from '../covers.ts';

/** Days between cutting one cover and sowing the next, where the first does not grow again (cover:S5). */
export const COVER_AFTER_COVER_DAYS = 7;

/** Days from a cut before bloom to a bed free of regrowth: long enough to see it, then the shortest sheet. */
const FINISH_DAYS = REGROWTH_DAYS.low + SHEET_DAYS.low;

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

/**
 * The first day another cover may be reckoned with after a stand that was cut: while it may still grow again, as if it did
 * and went under a sheet.
 */
export function coverMayFollow(state: AfterCut): Day {
  return freeFrom(state, isOpen(state) ? FINISH_DAYS : COVER_AFTER_COVER_DAYS);
}

/** The first day a cover that is planned may be sown after it: once the look for regrowth can be made. */
export function plannedMayFollow(state: AfterCut): Day {
  return freeFrom(state, isOpen(state) ? REGROWTH_DAYS.low : COVER_AFTER_COVER_DAYS);
}

function isOpen({ is, letBe }: AfterCut): boolean {
  return !letBe && (is === 'watched' || is === 'green');
}
