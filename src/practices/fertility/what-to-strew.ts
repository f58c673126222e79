/**
 * What a bed that falls short is given: organic fertilisers by their analysis, and none with phosphate where the soil
 * holds very much of it.
 */
import { type Fertiliser, gramsForNitrogen, nitrogenFertilisers } from '../../handbook/fertilisers.ts';
import { areaOf, type CropSpan, isPermanent } from '../bed-timeline.ts';
import type { PracticeInput } from '../practice.ts';
import { lastTest, VERY_HIGH_PHOSPHORUS_PPM } from '../soil-test.ts';
import { needOf } from './crop-needs.ts';
import type { BedLedger } from './ledger.ts';

/** Grams an amount is rounded to. House default: what a kitchen scale is read to. */
const ROUND_G = 10;

/** One way to bring the nitrogen that is short. */
export interface Strewn {
  fertiliser: Fertiliser;
  grams: number;
}

/** The part of a season's shortage that falls on one crop. */
export interface CropShort {
  span: CropSpan;
  /** Nitrogen in all, grams. */
  nitrogenG: number;
}

/**
 * The crops that are fed, each with its part of what is short by the usual figures; none unless the bed is short with
 * the best of them too. Light feeders, pulses and lasting crops are fed by compost alone.
 */
export function cropsShort(ledger: BedLedger): CropShort[] {
  const { band, bed, crops, balance } = ledger;
  if (band !== 'short') return [];
  const fed = crops.filter(
    ({ crop }) => (crop.nitrogen === 'high' || crop.nitrogen === 'medium') && !isPermanent(crop),
  );
  const all = fed.reduce((sum, span) => sum + needOf(bed, span), 0);
  return fed.map((span) => ({ span, nitrogenG: (-balance.usual * areaOf(bed) * needOf(bed, span)) / all }));
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

/** Never none. */
function rounded(grams: number): number {
  return Math.max(ROUND_G, Math.round(grams / ROUND_G) * ROUND_G);
}
