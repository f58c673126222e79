/**
 * The crops of a bed's season and what they want of nitrogen.
 */
import type { Bed } from '../../garden/garden.ts';
import { originOf } from '../../handbook/shapes.ts';
import { areaOf, type CropSpan, cropSpans, cropYear, isPermanent } from '../bed-timeline.ts';
import type { PracticeInput } from '../practice.ts';
import { certain, type LedgerLine, tenth } from './ledger-line.ts';

/** Kilograms a hectare in a gram a square metre. */
const KG_PER_HA = 10;

/** The crops of a season, in the order they go in: those counted to it, and a lasting crop that still stands. */
export function cropsOf({ garden, climate }: PracticeInput, bed: Bed, season: number): CropSpan[] {
  const spans = cropSpans(garden, bed.id, climate);
  return spans.filter((span) =>
    isPermanent(span.crop)
      ? cropYear(span, climate) <= season &&
        !spans.some((other) => other.from > span.from && cropYear(other, climate) <= season)
      : cropYear(span, climate) === season,
  );
}

/** The share of its bed a crop stands on, 0–1. */
export function shareOf(bed: Bed, { planting }: CropSpan): number {
  return planting.areaM2 === undefined ? 1 : Math.min(1, planting.areaM2 / areaOf(bed));
}

/** What a crop wants over its season on the whole bed, g/m²; none where the handbook names no figure. */
export function needOf(bed: Bed, span: CropSpan): number {
  return ((span.crop.nitrogenKgPerHa ?? 0) / KG_PER_HA) * shareOf(bed, span);
}

/** A line for each crop of a season. */
export function needLines(bed: Bed, crops: readonly CropSpan[]): LedgerLine[] {
  return crops.map((span) => {
    const { crop } = span;
    const need = needOf(bed, span);
    const percent = Math.round(100 * shareOf(bed, span));
    const saw = { crop: crop.name, wantsGPerM2: tenth((crop.nitrogenKgPerHa ?? 0) / KG_PER_HA), percent };
    const rule = crop.nitrogen === 'legume-fixer' ? 'ledger.fixes' : 'ledger.wants';
    return {
      side: 'want',
      of: crop.name.toLowerCase(),
      gPerM2: certain(need),
      reason: { rule, saw, source: originOf(crop, 'nitrogenKgPerHa') },
    };
  });
}
