/**
 * How much seed a stand takes: published broadcast rates, more of rye as the sowing slips towards the freeze.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Effect } from '../../garden/effects.ts';
import { lateSowingRates } from '../../handbook/cover-mixes.ts';
import type { LateSowingRate } from '../../handbook/shapes/cover.ts';
import type { Day } from '../../measures/days.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason, ReasonSource, Supply } from '../draft.ts';
import { weeksBeforeFreeze } from './sow-window.ts';

/** Seed for one part of a stand. */
export interface SeedAmount {
  part: CoverPart;
  gPerM2: number;
  /** Where the rate comes from. */
  from: ReasonSource;
  grams: number;
}

/** Seed for each part of a stand over an area, sown on a day. Grams, rounded up to a whole one. */
export function seedAmounts(parts: readonly CoverPart[], areaM2: number, sowOn: Day, climate: Climate): SeedAmount[] {
  return parts.map((part) => {
    const { gPerM2, from } = rateOn(part, parts.length > 1, sowOn, climate);
    return { part, gPerM2, from, grams: Math.ceil(gPerM2 * areaM2) };
  });
}

/** The dated rate where one is published; in a mix its rise is laid on the mix's own rate. */
function rateOn(part: CoverPart, mixed: boolean, sowOn: Day, climate: Climate): { gPerM2: number; from: ReasonSource } {
  const dated = lateSowingRates.find((row) => row.coverId === part.cover.id);
  const weeks = weeksBeforeFreeze(climate, sowOn);
  const [first] = dated?.steps ?? [];
  if (dated === undefined || first === undefined || weeks === undefined)
    return { gPerM2: part.gPerM2, from: part.rateFrom };
  const gPerM2 = datedRate(dated, weeks);
  return {
    gPerM2: mixed ? (part.gPerM2 * gPerM2) / first.gPerM2 : gPerM2,
    from: dated.sources[0] ?? part.rateFrom,
  };
}

/** A dated rate so many weeks before the freeze: straight lines between its steps, level beyond them. */
function datedRate({ steps }: LateSowingRate, weeks: number): number {
  const after = steps.findIndex((step) => step.weeksBeforeFreeze <= weeks);
  const [early, late] = [steps[after - 1], steps[after]];
  if (early === undefined || late === undefined) return (late ?? steps.at(-1))?.gPerM2 ?? 0;
  const share = (early.weeksBeforeFreeze - weeks) / (early.weeksBeforeFreeze - late.weeksBeforeFreeze);
  return early.gPerM2 + share * (late.gPerM2 - early.gPerM2);
}

/** Seed as things to have at hand, with the inoculant where a legume is among it. */
export function seedSupplies(seed: readonly SeedAmount[]): Supply[] {
  const inoculants = [...new Set(seed.flatMap(({ part }) => part.cover.inoculant ?? []))];
  return [
    ...seed.map(({ part, grams }) => seedSupply(part.cover.name.toLowerCase(), grams)),
    ...inoculants.map((group) => ({ what: `inoculant for ${group}` })),
  ];
}

/** Seed of one kind as a thing to have at hand. */
export function seedSupply(cover: string, grams: number): Supply {
  return { what: `${cover} seed`, amount: { value: grams, unit: 'g' } };
}

/** What sowing it makes true, of each kind by itself. */
export function seedSown(seed: readonly SeedAmount[], standId: string): Effect[] {
  return seed.map(({ part, grams }) => ({ makes: 'seed-sown', standId, coverId: part.cover.id, grams }));
}

/** Why so much seed. */
export function seedReasons(seed: readonly SeedAmount[], areaM2: number): Reason[] {
  return seed.map(({ part, gPerM2, grams, from }) => ({
    rule: 'cover-sow.rate',
    saw: {
      cover: part.cover.name.toLowerCase(),
      gPerM2: Math.round(gPerM2 * 10) / 10,
      areaM2: Math.round(areaM2 * 100) / 100,
      grams,
    },
    source: from,
  }));
}
