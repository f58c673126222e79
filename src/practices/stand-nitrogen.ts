/**
 * What a stand holds when it is cut or killed, and what of its nitrogen the next crop finds.
 */
import { usualHeatBetween } from '../climate/heat-left.ts';
import { coverYields, lateLegumeCredits, nitrogenClasses } from '../handbook/cover-yields.ts';
import type { CoverCrop, NitrogenClass } from '../handbook/shapes/cover.ts';
import { type Provenance, provenanceOf, type SourceId, type Span } from '../handbook/shapes/row.ts';
import type { Day } from '../measures/days.ts';
import type { CoverPart } from './covers.ts';
import type { PracticeInput } from './practice.ts';
import {
  carbonToNitrogen,
  releasedOnSurfaceGPerKg,
  releasedWorkedInGPerKg,
  TIE_UP_G_PER_M2,
  tiesUp,
} from './residue-nitrogen.ts';
import { isAfterMidsummer, midwinterAfter } from './seasons.ts';

/** Where a figure comes from. */
export interface Origin {
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** What the stand holds when it is cut or killed. */
export interface StandNitrogen {
  dryKgPerM2: Span;
  percentN: Span;
  carbonToNitrogen: Span;
  /** Nitrogen the next crop finds, g/m²; below zero where the residue ties some up. */
  availableGPerM2: Span;
  origin: Origin;
}

/**
 * Heat in which a stand grows full, °C·days over 4.4 °C: what rye needs in autumn (phenology:P1) and from midwinter to its
 * flowers (phenology:P20) together. For other kinds a house default.
 */
const FULL_GROWTH = {
  units: 309 + 450,
  autumnUnits: 309,
  springUnits: 450,
  count: { baseC: 4.4, method: 'mean-over-base' },
} as const;

/** Kilograms per m² in a kilogram per hectare. */
const PER_HA = 1e-4;

/** How much of a full stand grows from a sowing to an end, 0–1. */
export function grownShare({ climate }: PracticeInput, sown: Day, end: Day): number {
  return Math.min(1, usualHeatBetween(climate, [sown, end], FULL_GROWTH.count) / FULL_GROWTH.units);
}

/**
 * How much of its nitrogen an overwintered legume has gathered, 0–1. Most comes in May (cover:S4l), so that autumn warmth
 * beyond what a full stand has of autumn does not stand in for spring's.
 */
function overwinteredShare({ climate }: PracticeInput, sown: Day, midwinter: Day, end: Day): number {
  const autumn = usualHeatBetween(climate, [sown, midwinter], FULL_GROWTH.count);
  const spring = usualHeatBetween(climate, [midwinter, end], FULL_GROWTH.count);
  const { autumnUnits, springUnits, units } = FULL_GROWTH;
  return (Math.min(autumn, autumnUnits) + Math.min(spring, springUnits)) / units;
}

/**
 * A stand's dry matter and nitrogen at its end. The available nitrogen is a band: its low end the lesser, its high end the
 * greater of residue worked in and residue left lying.
 *
 * @param stage whether it stands green, in flower, or between the two
 */
export function standNitrogen(
  input: PracticeInput,
  parts: readonly CoverPart[],
  { sown, end, stage }: { sown: Day; end: Day; stage: 'green' | 'in flower' | 'between' },
): StandNitrogen | undefined {
  const grown = grownShare(input, sown, end);
  const midwinter = midwinterAfter(input.climate, sown);
  const inAutumn = isAfterMidsummer(input.climate, sown);
  const late = inAutumn && end <= midwinter;
  const legume = inAutumn && !late ? overwinteredShare(input, sown, midwinter, end) : grown;
  const each = parts.flatMap(({ cover }) => {
    const part = partOf(cover, (cover.form === 'legume' ? legume : grown) / parts.length, stage);
    return late ? part.map((holds) => credited(cover, holds, parts.length)) : part;
  });
  const [first] = each;
  if (first === undefined || each.length < parts.length) return undefined;
  const dry = { low: sumOf(each, ({ dry: { low } }) => low), high: sumOf(each, ({ dry: { high } }) => high) };
  const percentN = {
    low: weighted(each, ({ percentN: { low } }) => low),
    high: weighted(each, ({ percentN: { high } }) => high),
  };
  return {
    dryKgPerM2: dry,
    percentN,
    carbonToNitrogen: { low: carbonToNitrogen(percentN.high), high: carbonToNitrogen(percentN.low) },
    availableGPerM2: available(dry, percentN, grown),
    origin: weakest(each.map(({ origin }) => origin)),
  };
}

function available(dry: Span, percentN: Span, grown: number): Span {
  const { low, high } = percentN;
  const least = Math.min(releasedWorkedInGPerKg(low), releasedOnSurfaceGPerKg(low));
  const most = Math.max(releasedWorkedInGPerKg(high), releasedOnSurfaceGPerKg(high));
  return {
    low: tiesUp(low) ? -TIE_UP_G_PER_M2 * grown : dry.low * least,
    high: dry.high * most,
  };
}

/**
 * A legume sown in late summer and over by winter weighs no more than Wisconsin's credits for such stands say, whatever
 * a full stand of it would: they are what the next crop finds of it at the most.
 */
function credited(cover: CoverCrop, { dry, percentN, origin }: PartHolds, parts: number): PartHolds {
  const credit = lateLegumeCredits.find(({ coverIds }) => coverIds.includes(cover.id));
  if (credit === undefined) return { dry, percentN, origin };
  const most = credit.gPerM2.high / parts / releasedWorkedInGPerKg(percentN.high);
  if (dry.high <= most) return { dry, percentN, origin };
  const { provenance } = origin;
  return {
    dry: { low: Math.min(dry.low, most), high: most },
    percentN,
    origin: { provenance, sources: [...credit.sources, ...origin.sources] },
  };
}

interface PartHolds {
  dry: Span;
  percentN: Span;
  origin: Origin;
}

function partOf(cover: CoverCrop, share: number, stage: 'green' | 'in flower' | 'between'): PartHolds[] {
  const tissue = nitrogenClasses.find((row) => row.of === classOf(cover));
  const full = fullStand(cover, tissue);
  if (tissue === undefined || full === undefined) return [];
  const { green, inFlower } = tissue;
  const percentN =
    stage === 'green' ? green : { low: inFlower.low, high: stage === 'between' ? green.high : inFlower.high };
  return [{ dry: { low: full.dry.low * share, high: full.dry.high * share }, percentN, origin: full.origin }];
}

function classOf(cover: CoverCrop): NitrogenClass['of'] {
  if (cover.id === 'cereal_rye') return 'rye';
  if (cover.form !== 'legume') return 'grass or broadleaf';
  return cover.inoculant === 'red and white clover' ? 'perennial legume' : 'annual legume';
}

/** Dry matter of a full stand: of legumes by the nitrogen given for one. */
function fullStand(cover: CoverCrop, tissue: NitrogenClass | undefined): { dry: Span; origin: Origin } | undefined {
  const known = coverYields.find(({ coverId }) => coverId === cover.id);
  if (known !== undefined) return { dry: known.dryKgPerM2, origin: known };
  const kgPerHa = cover.nitrogenKgPerHa;
  if (kgPerHa === undefined || tissue === undefined || cover.form !== 'legume') return undefined;
  const dry = {
    low: (PER_HA * kgPerHa.low * 100) / tissue.green.high,
    high: (PER_HA * kgPerHa.high * 100) / tissue.green.low,
  };
  const given = provenanceOf(cover, 'nitrogenKgPerHa');
  const read = cover.readIn?.nitrogenKgPerHa;
  const sources = [...(read === undefined ? [] : [read]), ...tissue.sources];
  return { dry, origin: { provenance: given === 'published' ? 'derived' : given, sources } };
}

function sumOf(each: readonly PartHolds[], figure: (part: PartHolds) => number): number {
  return each.reduce((sum, part) => sum + figure(part), 0);
}

/** A percentage of the whole stand, each part by its middle weight. */
function weighted(each: readonly PartHolds[], figure: (part: PartHolds) => number): number {
  const weight = ({ dry }: PartHolds) => (dry.low + dry.high) / 2;
  const all = sumOf(each, weight);
  return all === 0 ? sumOf(each, figure) / each.length : sumOf(each, (part) => figure(part) * weight(part)) / all;
}

/** What rests on something recalled is recalled. */
function weakest(origins: readonly Origin[]): Origin {
  const recalled = origins.find(({ provenance }) => provenance === 'from memory' || provenance === 'house default');
  const provenance = recalled?.provenance ?? origins[0]?.provenance ?? 'derived';
  return { provenance, sources: [...new Set(origins.flatMap(({ sources }) => sources))] };
}
