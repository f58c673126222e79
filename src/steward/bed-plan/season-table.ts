/**
 * The beds of a garden by seasons: what grew, what is planned, and a proposal in front of it, with the rules that break
 * where they break.
 */
import { seasonOf } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { Day } from '../../measures/days.ts';
import { areaOf, type CropSpan, cropSpans, cropYear, isPermanent } from '../../practices/bed-timeline.ts';
import { coverName } from '../../practices/covers.ts';
import type { Reason } from '../../practices/draft.ts';
import { offSeason } from '../../practices/planting/off-season.ts';
import { plantingsIn } from '../../practices/planting/planting-in-bed.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { brokenRules } from '../../practices/rotation-plan/broken.ts';
import { gardenProblem } from '../../practices/rotation-plan/garden-problem.ts';
import type { BrokenRule } from '../../practices/rotation-plan/looked-at.ts';
import type { RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { isPastUnknown } from '../../practices/rotation-plan/waits.ts';
import { seasonAfter, seasonName } from '../../practices/seasons.ts';
import { betweenTable } from '../rotation-plan/between.ts';
import type { RotationProposal } from '../rotation-plan/propose.ts';

/** Seasons behind the running one that are shown: these, and more as far as anything is known. House defaults. */
const SEASONS_BEHIND = { least: 3, most: 5 } as const;

/** A crop in a bed in a season. */
export interface CellCrop {
  crop: Vegetable;
  how: 'in the ground' | 'planned' | 'proposed';
  /** Of what the garden holds, its id; of several sowings of one crop the first. */
  plantingId?: string;
  start?: { how: 'sow' | 'set-out'; day: Day };
  /** The last harvest expected or past; absent for what stays. */
  until?: Day;
  /** The part of the bed it has; absent for the whole. */
  areaM2?: number;
  /** Whether kin of it may have stood there not long ago: nobody wrote it down. */
  pastUnknown?: true;
  /** What stands against its planned day, or against there being a day at all. */
  offSeason?: readonly Reason[];
}

/** A bed in a season. */
export interface Cell {
  season: number;
  crops: readonly CellCrop[];
  /** Covers sown or to be sown in the season, in words. */
  covers: readonly { name: string; planned: boolean }[];
  broken: readonly BrokenRule[];
  /** Whether nothing is written down of it, nor of any season before. */
  unknown: boolean;
  /** Whether the bed is not there yet. */
  notThere: boolean;
}

/** The whole of it. */
export interface SeasonTable {
  seasons: readonly { season: number; name: string; when: 'past' | 'now' | 'ahead' }[];
  rows: readonly { bed: Bed; cells: readonly Cell[] }[];
  /** Rules that break at no one bed. */
  elsewhere: readonly BrokenRule[];
}

/**
 * A garden as it is planned, without wishes or a proposal, as a problem whose rules can be looked up.
 *
 * @param candidates crops that may be put beside what is planned, one at a time
 */
export function plannedProblem(
  input: PracticeInput,
  years: number,
  candidates: readonly Vegetable[] = [],
): RotationProblem {
  const garden = { ...input.garden, wishes: [] };
  const bare = gardenProblem({ ...input, garden }, { years, anew: false });
  const [season] = bare.seasons;
  const wishes = candidates.map(({ id }) => ({ cropId: id, season, amount: { beds: 1 } }));
  return { ...bare, between: betweenTable({ ...input, garden }, { ...bare, wishes }, 'with what is there') };
}

/**
 * Beds by seasons, from some years back to the last that is planned.
 *
 * @param held what the rules are looked up in: the proposal's own problem, or the garden's as it is planned
 */
export function seasonTable(
  input: PracticeInput,
  held: { problem: RotationProblem; proposal?: RotationProposal },
): SeasonTable {
  const { garden, climate, today } = input;
  const { problem, proposal } = held;
  const placements = proposal?.placements ?? [];
  const broken = brokenRules(problem, placements);
  const now = seasonOf(climate.seasonTurn, today);
  const last = proposal === undefined ? lastOpen(problem, now) : Math.max(now + 1, problem.seasons.at(-1) ?? now);
  const since = Math.min(now, ...problem.beds.flatMap(({ carried }) => carried.map(({ season }) => season)));
  const behind = Math.min(SEASONS_BEHIND.most, Math.max(SEASONS_BEHIND.least, now - since));
  const seasons = Array.from({ length: last - now + behind + 1 }, (_, at) => now - behind + at);
  const rows = garden.beds.map((bed) => {
    const spans = cropSpans(garden, bed.id, climate);
    const off = offSeasonIn(input, bed);
    const { thereFrom } = problem.beds.find(({ id }) => id === bed.id) ?? {};
    const first = Math.min(...spans.map((span) => cropYear(span, climate)));
    return {
      bed,
      cells: seasons.map((season): Cell => {
        const proposed = placements.filter((place) => place.bedId === bed.id && place.season === season);
        const crops = [
          ...heldCrops(input, spans, season).map((crop) => asDated(off, crop)),
          ...proposed.map((place) => proposedCrop(place, bed)),
        ];
        return {
          season,
          crops: crops.map((crop) => asKnown(input, problem, bed, season, crop)),
          covers: coversIn(input, bed, season),
          broken: broken.filter((each) => each.bedId === bed.id && each.season === season),
          unknown: thereFrom === undefined && season < first && season <= now,
          notThere: season < (thereFrom ?? season),
        };
      }),
    };
  });
  return {
    seasons: seasons.map((season) => ({
      season,
      name: seasonName(climate, season),
      when: season < now ? 'past' : season === now ? 'now' : 'ahead',
    })),
    rows,
    elsewhere: broken.filter(({ bedId }) => bedId === undefined),
  };
}

/** The first season that nothing is planned for yet: two ahead at the least, so that there is always one to plan. */
function lastOpen({ beds, seasons }: RotationProblem, now: number): number {
  const planned = beds.flatMap(({ carried }) => carried.map(({ season }) => season));
  return Math.min(Math.max(now + 2, ...planned.map((season) => season + 1)), seasons.at(-1) ?? now + 2);
}

/** What the garden holds in a season; a lasting crop in every one from its planting on, sowings of one crop once. */
function heldCrops({ climate }: PracticeInput, spans: readonly CropSpan[], season: number): CellCrop[] {
  const here = spans.filter((span) => {
    const from = cropYear(span, climate);
    if (!isPermanent(span.crop)) return from === season;
    return from <= season && (span.to === undefined || season <= seasonOf(climate.seasonTurn, span.to));
  });
  const firsts = here.filter((span, at) => here.findIndex((other) => isSameSowing(other, span)) === at);
  return firsts.map(({ planting, crop, to }): CellCrop => {
    const { areaM2, start } = planting;
    return {
      crop,
      how: start.happened ? 'in the ground' : 'planned',
      plantingId: planting.id,
      start,
      ...(to === undefined ? {} : { until: to }),
      ...(areaM2 === undefined ? {} : { areaM2 }),
    };
  });
}

/** What stands against the days of what is planned in a bed, by planting. */
function offSeasonIn(input: PracticeInput, bed: Bed): ReadonlyMap<string, readonly Reason[]> {
  const found = plantingsIn(input, bed).map((at) => {
    const { refused, warned } = offSeason(input, at);
    return [at.planting.id, refused === undefined ? warned : [refused]] as const;
  });
  return new Map(found.filter(([, reasons]) => reasons.length > 0));
}

function asDated(off: ReadonlyMap<string, readonly Reason[]>, crop: CellCrop): CellCrop {
  const reasons = crop.plantingId === undefined ? undefined : off.get(crop.plantingId);
  return reasons === undefined ? crop : { ...crop, offSeason: reasons };
}

function isSameSowing({ planting: one }: CropSpan, { planting: other }: CropSpan): boolean {
  return one.cropId === other.cropId && one.start.happened === other.start.happened;
}

function proposedCrop(placement: RotationProposal['placements'][number], bed: Bed): CellCrop {
  const { cropId, areaM2, start, lastHarvest } = placement;
  return {
    crop: vegetableById(cropId),
    how: 'proposed',
    ...(isWhole(areaM2, bed) ? {} : { areaM2 }),
    ...(start === undefined ? {} : { start }),
    ...(lastHarvest === undefined ? {} : { until: lastHarvest }),
  };
}

/** Areas of a proposal are read to the hundredth of a square metre. */
function isWhole(areaM2: number, bed: Bed): boolean {
  return areaM2 >= areaOf(bed) - 0.01;
}

/** With what is not known of the bed's past told of a crop that is still to come. */
function asKnown(
  { climate, today }: PracticeInput,
  problem: RotationProblem,
  { id }: Bed,
  season: number,
  crop: CellCrop,
): CellCrop {
  const bed = problem.beds.find((each) => each.id === id);
  const isToCome = crop.how !== 'in the ground' && !isPermanent(crop.crop);
  if (!isToCome || bed === undefined) return crop;
  const isUnknown = isPastUnknown(bed, seasonAfter(climate, today), crop.crop, season);
  return isUnknown ? { ...crop, pastUnknown: true } : crop;
}

function coversIn({ garden, climate }: PracticeInput, bed: Bed, season: number): Cell['covers'] {
  const stands = garden.stands
    .filter(({ bedId, sow }) => bedId === bed.id && seasonOf(climate.seasonTurn, sow.day) === season)
    .sort((a, b) => (a.sow.day < b.sow.day ? -1 : 1))
    .map(({ coverId, sow }) => ({ name: coverName(coverId), planned: !sow.happened }));
  const mulches = garden.mulches
    .filter(({ bedId, from }) => bedId === bed.id && seasonOf(climate.seasonTurn, from) === season)
    .map(({ mulch }) => ({ name: `a mulch of ${mulch}`, planned: true }));
  return [...stands, ...mulches];
}
