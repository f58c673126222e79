/**
 * What is odd about a wish that may stand all the same.
 */
import type { CropWish } from '../../garden/garden.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import { areaOf } from '../../practices/bed-timeline.ts';
import { seasonAfter, seasonName } from '../../practices/seasons.ts';
import type { GardenView } from '../doings/steward.ts';

/** Doubts of one wish, in whole sentences: its season is over, or all beds together are less than it. */
export function wishDoubts({ garden, climate, plan: { today } }: GardenView, { amount, season }: CropWish): string[] {
  const { beds, place } = garden;
  const allM2 = beds.reduce((sum, bed) => sum + areaOf(bed), 0);
  const count = beds.length === 1 ? '1 bed' : `${beds.length} beds`;
  const all = 'beds' in amount ? count : formatQuantity({ value: allM2, unit: 'm2' }, place.units);
  const isTooMuch = 'beds' in amount ? amount.beds > beds.length : amount.areaM2 > allM2 + HUNDREDTH_M2;
  const first = seasonAfter(climate, today);
  return [
    ...(season !== undefined && season < first
      ? [`Plans begin with ${seasonName(climate, first)}: nothing is placed for a season before it.`]
      : []),
    ...(isTooMuch ? [`It is more than all beds together have: ${all}.`] : []),
  ];
}

/** What an area may be out by where it was read to the hundredth of a square metre. */
const HUNDREDTH_M2 = 0.01;
