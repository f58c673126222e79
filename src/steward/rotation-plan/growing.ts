/**
 * A crop as it is usually grown in a season: when it may go in, and when its harvest is over if it goes in on a day.
 */
import type { Planting } from '../../garden/garden.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import type { Day } from '../../measures/days.ts';
import { type CropSpan, cropSpans } from '../../practices/bed-timeline.ts';
import { cropWindow } from '../../practices/planting/crop-window.ts';
import type { How } from '../../practices/planting/first-day.ts';
import type { PracticeInput } from '../../practices/practice.ts';

/** Days to clear a crop and make its bed ready for a second of the same season: 0 to 7, from memory; a house default. */
export const CLEAR_DAYS = 3;

/** How a crop goes in, and between which days. */
export interface Growing {
  crop: Vegetable;
  how: How;
  earliest: Day;
  latest: Day;
  /** The last of the days that suit best, of a first sowing. */
  bestUntil: Day;
  /** From here on it is late for it; absent where its window does not end so. */
  lateFrom?: Day;
}

/** Set out where that is how it is grown, else sown; nothing where no dates are known or the season is too short. */
export function growing(
  { climate, garden }: Pick<PracticeInput, 'climate' | 'garden'>,
  crop: Vegetable,
  season: number,
): Growing | undefined {
  const how = crop.establish === 'transplant' ? 'set-out' : 'sow';
  const inSeason = crop.maturityFrom === 'fall-set' ? season - 1 : season;
  const window = cropWindow(climate, { crop, how, season: inSeason, frostRisk: garden.place.frostRisk });
  if (window === undefined) return undefined;
  const { earliest, latest, bestUntil, lateFrom } = window;
  return { crop, how, earliest, latest, bestUntil, ...(lateFrom === undefined ? {} : { lateFrom }) };
}

/** The time of a crop in a bed where it goes in on a day; a lasting crop has no end. */
export function grownFrom(
  { climate, garden }: Pick<PracticeInput, 'climate' | 'garden'>,
  { crop, how }: Growing,
  { bedId, day }: { bedId: string; day: Day },
): CropSpan {
  const planting: Planting = { id: `${crop.id} ${day}`, bedId, cropId: crop.id, start: { how, day, happened: false } };
  const [span] = cropSpans({ ...garden, plantings: [planting] }, bedId, climate);
  return span ?? { planting, crop, from: day, end: 'permanent' };
}
