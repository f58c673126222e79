/**
 * The crops of a bed's season and what they want of nitrogen.
 */
import type { Bed } from '../../garden/garden.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { tenth } from '../../measures/tenth.ts';
import { areaOf, type CropSpan, cropSpans, cropYear, isPermanent } from '../bed-timeline.ts';
import type { PracticeInput } from '../practice.ts';
import { certain, type LedgerLine } from './ledger-line.ts';

/** Kilograms a hectare in a gram a square metre. */
const KG_PER_HA = 10;

/**
 * The crops of a season, in the order they go in: those counted to it, and a lasting crop that still stands. One that has
 * its bed to itself counts as taken out once something else went in; beside one on a share of it others stand.
 */
export function cropsOf({ garden, climate }: PracticeInput, bed: Bed, season: number): CropSpan[] {
  const spans = cropSpans(garden, bed.id, climate);
  return spans.filter((span) => {
    if (!isPermanent(span.crop)) return cropYear(span, climate) === season;
    const takenOut = spans.some((other) => other.from > span.from && cropYear(other, climate) <= season);
    return cropYear(span, climate) <= season && (span.planting.areaM2 !== undefined || !takenOut);
  });
}

/** The share of its bed a crop stands on, 0–1. */
export function shareOf(bed: Bed, { planting }: CropSpan): number {
  return planting.areaM2 === undefined ? 1 : Math.min(1, planting.areaM2 / areaOf(bed));
}

/** What a crop wants over its season on the ground it stands on, g/m²; none where the handbook names no figure. */
export function needOf({ crop }: CropSpan): number {
  return (crop.nitrogenKgPerHa ?? 0) / KG_PER_HA;
}

/**
 * What a crop's ground is asked for in its season, g/m²: what it wants itself, and what crops before or after it want of
 * the same ground; of those on a share of the bed that share of it. Crops beside it stand on ground of their own.
 */
export function groundNeed(bed: Bed, span: CropSpan, crops: readonly CropSpan[]): number {
  const others = crops.filter((other) => other !== span && !standTogether(other, span));
  return others.reduce((sum, other) => sum + needOf(other) * shareOf(bed, other), needOf(span));
}

/** Whether two crops stand in their bed at one time. */
export function standTogether(one: CropSpan, other: CropSpan): boolean {
  return one.from < (other.to ?? FOREVER) && other.from < (one.to ?? FOREVER);
}

/** A day after every other. */
const FOREVER = '9999-12-31';

/** A line for each crop of a season. */
export function needLines(bed: Bed, crops: readonly CropSpan[]): LedgerLine[] {
  return crops.map((span) => {
    const { crop } = span;
    const percent = Math.round(100 * shareOf(bed, span));
    const saw = { crop: crop.name, wantsGPerM2: tenth(needOf(span)), percent };
    const rule = crop.nitrogen === 'legume-fixer' ? 'ledger.fixes' : 'ledger.wants';
    return {
      side: 'want',
      of: crop.name.toLowerCase(),
      gPerM2: certain(needOf(span)),
      reason: { rule, saw, source: originOf(crop, 'nitrogenKgPerHa') },
    };
  });
}
