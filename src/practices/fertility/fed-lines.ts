/**
 * What fertilisers that were strewn give. One strewn for a crop feeds the ground that crop stands on.
 */

import { seasonOf } from '../../climate/season.ts';
import type { Bed, BedFed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { fertiliserById, releasedShare } from '../../handbook/fertilisers.ts';
import { tenth } from '../../measures/tenth.ts';
import { areaOf, type CropSpan, cropSpans, cropYear, isPermanent } from '../bed-timeline.ts';
import type { PracticeInput } from '../practice.ts';
import { shareOf, standTogether } from './crop-needs.ts';
import { type Grams, type LedgerLine, plus, seen, times } from './ledger-line.ts';

/** A fertiliser strewn on a bed for a season, with the crop it was strewn for. */
export interface Fed {
  fed: BedFed;
  /** Absent where it was strewn for the whole bed, or for a crop that is no longer known. */
  span?: CropSpan | undefined;
  /** Its nitrogen over the whole bed, g/m². */
  gPerM2: Grams;
}

/**
 * What was strewn on a bed for a season: for a crop of one season in that season, for the whole bed or a lasting crop in the
 * one it was strewn in.
 */
export function fedIn({ garden, climate }: PracticeInput, bed: Bed, season: number): Fed[] {
  const spans = cropSpans(garden, bed.id, climate);
  return inBed(garden.fed, bed.id).flatMap((fed) => {
    const span = spans.find(({ planting }) => planting.id === fed.plantingId);
    const its =
      span === undefined || isPermanent(span.crop) ? seasonOf(climate.seasonTurn, fed.on) : cropYear(span, climate);
    return its === season ? [{ fed, span, gPerM2: nitrogenOf(fed, areaOf(bed)) }] : [];
  });
}

/**
 * All of its nitrogen by its analysis, as veg:V10 and veg:V11 reckon what to strew; the low end is what is released
 * within the season.
 */
function nitrogenOf({ fertiliserId, grams }: BedFed, areaM2: number): Grams {
  const fertiliser = fertiliserById(fertiliserId);
  const whole = (grams * fertiliser.nitrogen) / areaM2;
  return { low: whole * releasedShare(fertiliser), usual: whole, high: whole };
}

/** A line for each that was strewn. */
export function fedLines(all: readonly Fed[]): LedgerLine[] {
  return all.map(({ fed, span, gPerM2 }) => {
    const fertiliser = fertiliserById(fed.fertiliserId);
    return {
      side: 'give',
      of: `${fertiliser.name} strewn${span === undefined ? '' : ` for the ${span.crop.name.toLowerCase()}`}`,
      gPerM2,
      reason: {
        rule: 'ledger.fed',
        saw: {
          fertiliser: fertiliser.name,
          grams: Math.round(fed.grams),
          on: fed.on,
          percentN: tenth(100 * fertiliser.nitrogen),
          percentReleased: Math.round(100 * releasedShare(fertiliser)),
          ...seen(gPerM2),
        },
        source: 'veg:V10',
      },
    };
  });
}

/**
 * What was strewn as the ground of one crop has it, g/m²: its own meal lies on its own ground, that of a crop before or
 * after it on their common ground, and that of a crop beside it elsewhere.
 */
export function fedGround(bed: Bed, span: CropSpan, all: readonly Fed[]): Grams {
  return all.reduce<Grams>((sum, each) => plus(sum, onGround(bed, span, each)), { low: 0, usual: 0, high: 0 });
}

function onGround(bed: Bed, span: CropSpan, { span: its, gPerM2 }: Fed): Grams {
  if (its === undefined) return gPerM2;
  if (its.planting.id === span.planting.id) return times(gPerM2, 1 / shareOf(bed, span));
  return times(gPerM2, standTogether(its, span) ? 0 : 1);
}
