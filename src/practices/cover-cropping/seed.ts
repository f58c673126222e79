/**
 * How much seed a stand takes: published broadcast rates, more of rye as the sowing slips towards the freeze.
 */
import type { Climate } from '../../climate/climate.ts';
import { lateSowingRates } from '../../handbook/cover-mixes.ts';
import { originOf } from '../../handbook/shapes.ts';
import type { Day } from '../../measures/days.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason, Supply } from '../draft.ts';
import { weeksBeforeFreeze } from './sow-window.ts';

/** Seed for one part of a stand. */
export interface SeedAmount {
  part: CoverPart;
  gPerM2: number;
  grams: number;
}

/** Seed for each part of a stand over an area, sown on a day. Grams, rounded up to a whole one. */
export function seedAmounts(parts: readonly CoverPart[], areaM2: number, sowOn: Day, climate: Climate): SeedAmount[] {
  return parts.map((part) => {
    const gPerM2 = part.gPerM2 * lateFactor(part.cover.id, sowOn, climate);
    return { part, gPerM2, grams: Math.ceil(gPerM2 * areaM2) };
  });
}

/** How much more seed a late sowing takes than one in good time: 1 where no dated rates are published. */
function lateFactor(coverId: string, sowOn: Day, climate: Climate): number {
  const dated = lateSowingRates.find((row) => row.coverId === coverId);
  const weeks = weeksBeforeFreeze(climate, sowOn);
  const steps = dated?.steps ?? [];
  const first = steps[0];
  if (first === undefined || weeks === undefined) return 1;
  const after = steps.findIndex((step) => step.weeksBeforeFreeze <= weeks);
  const [early, late] = [steps[after - 1], steps[after]];
  if (after === 0) return 1;
  if (late === undefined || early === undefined) return (steps.at(-1)?.gPerM2 ?? first.gPerM2) / first.gPerM2;
  const share = (early.weeksBeforeFreeze - weeks) / (early.weeksBeforeFreeze - late.weeksBeforeFreeze);
  return (early.gPerM2 + share * (late.gPerM2 - early.gPerM2)) / first.gPerM2;
}

/** Seed as things to have at hand, with the inoculant where a legume is among it. */
export function seedSupplies(seed: readonly SeedAmount[]): Supply[] {
  const inoculants = [...new Set(seed.flatMap(({ part }) => part.cover.inoculant ?? []))];
  return [
    ...seed.map(({ part, grams }) => ({
      what: `${part.cover.name.toLowerCase()} seed`,
      amount: { value: grams, unit: 'g' as const },
    })),
    ...inoculants.map((group) => ({ what: `inoculant for ${group}` })),
  ];
}

/** Why so much seed. */
export function seedReasons(seed: readonly SeedAmount[], areaM2: number): Reason[] {
  return seed.map(({ part, gPerM2, grams }) => ({
    rule: 'cover-sow.rate',
    saw: {
      cover: part.cover.name.toLowerCase(),
      gPerM2: Math.round(gPerM2 * 10) / 10,
      areaM2: Math.round(areaM2 * 100) / 100,
      grams,
    },
    source: originOf(part.cover, 'broadcastGPerM2'),
  }));
}
