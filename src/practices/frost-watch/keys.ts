/**
 * Keys of frost watch. A night is what its tasks are about, so it is named by its evening, as a pile is by its building.
 */
import type { Day } from '../../measures/days.ts';
import type { TaskKey } from '../draft.ts';

/** The season-long entry of a half of a season. */
export function watchKey(half: 'spring' | 'autumn', season: number): TaskKey {
  return `frost-watch/${half}:${season}`;
}

/** Taking the covers off on the morning after. */
export function uncoverKey(evening: Day): TaskKey {
  return `frost-uncover/night:${evening}`;
}

/** Looking at what a cold night did. */
export function lookKey(evening: Day): TaskKey {
  return `frost-look/night:${evening}`;
}
