/**
 * The low over a garden's beds.
 */
import type { ColdNight, Place } from '../../garden/garden.ts';

/**
 * The low to expect over the beds: a forecast is made for the area, so a cold pocket takes its own degrees off. Those
 * of a warm wall are not put on, because a cover too many costs little and one too few a crop. House default.
 */
export function lowOverBeds({ lowC }: ColdNight, { tempOffsetC }: Place): number {
  return lowC + Math.min(0, tempOffsetC);
}
