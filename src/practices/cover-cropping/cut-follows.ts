/**
 * A cut that is timed from a sowing still to be done: it moves with the day that sowing is put on.
 */
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import type { Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter } from '../seasons.ts';
import { type CutWindow, cutWindow, LEAST_GROWTH_DAYS } from './cut-window.ts';
import type { StandInBed } from './stand.ts';
import { situationOf } from './winter.ts';

/** The days a cut may come after its sowing, and the window that leaves room for each day the sowing may be put on. */
export interface FollowingCut {
  window: Window;
  minDays: number;
  /** Absent where no flower closes it. */
  maxDays?: number;
}

/** A sowing that is still to be done: its window, and the day its cut was reckoned from. */
interface SowingMeant {
  window: Window;
  sown: Day;
}

/**
 * How the cut of a summer's stand follows its sowing.
 *
 * @returns nothing for a stand that goes through a winter: its cut falls in spring, whichever day it was sown
 */
export function followsSowing(
  input: PracticeInput,
  { bed, parts }: StandInBed,
  { window, sown }: SowingMeant,
  cut: CutWindow,
): FollowingCut | undefined {
  const mayWinter = parts.some(({ cover }) => situationOf(cover, sown, input) === 'overwintered');
  if (mayWinter && !isBeforeWinter(input, sown, cut)) return undefined;
  const after = (day: Day): CutWindow | undefined => cutWindow(input, bed.id, parts, day);
  const minDays = Math.min(daysBetween(sown, cut.window.earliest), LEAST_GROWTH_DAYS);
  const flowers = cut.bloom?.close;
  return {
    window: {
      earliest: earliestOf(cut.window.earliest, addDays(window.earliest, minDays)),
      preferred: cut.window.preferred,
      latest: latestOf(cut.window.latest, after(window.latest)?.window.latest ?? cut.window.latest),
    },
    minDays,
    ...(flowers === undefined ? {} : { maxDays: Math.max(daysBetween(sown, flowers), minDays + 1) }),
  };
}

/** Whether a stand is cut before the winter that follows its sowing: then what winter would do to it decides nothing. */
export function isBeforeWinter({ climate }: Pick<PracticeInput, 'climate'>, sown: Day, { window }: CutWindow): boolean {
  return window.latest <= midwinterAfter(climate, sown);
}
