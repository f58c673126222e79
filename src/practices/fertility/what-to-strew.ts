/**
 * What a bed that falls short is given: organic fertilisers by their analysis, and none with phosphate where the soil
 * holds very much of it.
 */
import { type Fertiliser, gramsForNitrogen, nitrogenFertilisers } from '../../handbook/fertilisers.ts';
import { areaOf, type CropSpan, isPermanent } from '../bed-timeline.ts';
import type { PracticeInput } from '../practice.ts';
import { lastTest, VERY_HIGH_PHOSPHORUS_PPM } from '../soil-test.ts';
import { needOf, shareOf } from './crop-needs.ts';
import type { BedLedger } from './ledger.ts';

/** Grams an amount is rounded to. House default: what a kitchen scale is read to. */
const ROUND_G = 10;

/** One way to bring the nitrogen that is short. */
export interface Strewn {
  fertiliser: Fertiliser;
  grams: number;
}

/** What falls short for one crop. */
export interface CropShort {
  span: CropSpan;
  /** Nitrogen in all, grams. */
  nitrogenG: number;
}

/**
 * The crops that are fed, each with its part of what its ground is short by the usual figures; none whose ground is not
 * short with the best of them too. Light feeders, pulses and lasting crops are fed by compost alone.
 */
export function cropsShort({ bed, grounds }: BedLedger): CropShort[] {
  return grounds.flatMap(({ span, wants, balance, band }) => {
    const isFed = (span.crop.nitrogen === 'high' || span.crop.nitrogen === 'medium') && !isPermanent(span.crop);
    if (band !== 'short' || !isFed) return [];
    const areaM2 = shareOf(bed, span) * areaOf(bed);
    return [{ span, nitrogenG: -balance.usual * areaM2 * (needOf(span) / wants) }];
  });
}

/** Phosphorus of a bed's soil where the newest test found it very high, ppm. */
export function veryHighPhosphorus({ garden }: Pick<PracticeInput, 'garden'>, bedId: string): number | undefined {
  const ppm = lastTest(garden, bedId, ({ phosphorusPpm }) => phosphorusPpm);
  return ppm !== undefined && ppm >= VERY_HIGH_PHOSPHORUS_PPM ? ppm : undefined;
}

/** The fertilisers that bring so much nitrogen, with how much of each: any one of them does. */
export function waysToBring(input: Pick<PracticeInput, 'garden'>, bedId: string, nitrogenG: number): Strewn[] {
  // On soil very high in phosphorus nothing is given that brings more of it (veg:V59).
  const without = veryHighPhosphorus(input, bedId) !== undefined;
  return nitrogenFertilisers
    .filter(({ phosphate }) => !without || phosphate === 0)
    .map((fertiliser) => ({ fertiliser, grams: rounded(gramsForNitrogen(nitrogenG, fertiliser)) }));
}

/** Rounded up: what is strewn as told brings what is short, and a ledger that counts it says so. */
function rounded(grams: number): number {
  return Math.ceil(grams / ROUND_G) * ROUND_G;
}
