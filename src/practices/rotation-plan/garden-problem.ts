/**
 * A garden as a rotation to be planned.
 */

import type { Climate } from '../../climate/climate.ts';
import { dayOfIndex } from '../../climate/season.ts';
import type { Bed, Garden, Planting } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById, vegetables } from '../../handbook/vegetables.ts';
import { type Day, latestOf } from '../../measures/days.ts';
import { areaOf, type CropSpan, cropSpans, cropYear, isPermanent } from '../bed-timeline.ts';
import { findingsIn } from '../disease.ts';
import type { Reason } from '../draft.ts';
import { sowKey } from '../keys.ts';
import { cropLockOut, type LockOut, standLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { firstSeasonOf, NOTHING_BEFORE, seasonAfter, seasonName } from '../seasons.ts';
import type { Carried, ClosedTo, CoverAhead, PlanBed, PlanWish, RotationProblem } from './problem.ts';

/** What is to be planned. */
export interface RotationAsk {
  /** Seasons ahead, from 1 to {@link MOST_SEASONS}. */
  years: number;
  /** Leaves out what the gardener has planned for those seasons, as if nothing were settled. */
  anew: boolean;
}

/** The most seasons that are planned at once. */
export const MOST_SEASONS = 4;

/** Season index by which what is planted in autumn goes in: the end of September north. House default. */
const AUTUMN_INDEX = 270;

/**
 * The problem of a garden's next seasons, less the table of what lies between two crops. The first is the season that work
 * done now prepares for.
 */
export function gardenProblem(input: PracticeInput, ask: RotationAsk): Omit<RotationProblem, 'between'> {
  const { climate, today } = input;
  const first = seasonAfter(climate, today);
  const seasons: [number, ...number[]] = [first];
  for (let season = first + 1; season < first + ask.years; season += 1) seasons.push(season);
  const garden = ask.anew ? withoutPlans(input.garden, climate, seasons) : input.garden;
  const wishes = seasons.flatMap((season) => wishesFor(garden, season));
  return {
    seasons,
    seasonNames: Object.fromEntries(seasonsNamed(first).map((season) => [season, seasonName(climate, season)])),
    beds: garden.beds.map((bed) => planBed({ ...input, garden }, bed, seasons)),
    wishes,
  };
}

/** Every season that a sentence may have to name: as far back as anything is held against a crop. */
function seasonsNamed(first: number): number[] {
  return Array.from({ length: 2 * NAMED_SEASONS }, (_, at) => first - NAMED_SEASONS + at);
}

const NAMED_SEASONS = 30;

/** What the gardener has only planned for some seasons: what a plan made anew for them takes the place of. */
export function plannedFor(garden: Garden, climate: Climate, seasons: readonly number[]): Planting[] {
  return garden.plantings.filter(({ cropId, start }) => {
    const crop = vegetableById(cropId);
    return !start.happened && !isPermanent(crop) && seasons.includes(cropYear({ crop, from: start.day }, climate));
  });
}

/** A garden without them. */
export function withoutPlans(garden: Garden, climate: Climate, seasons: readonly number[]): Garden {
  const leaving = plannedFor(garden, climate, seasons);
  return { ...garden, plantings: garden.plantings.filter((planting) => !leaving.includes(planting)) };
}

/** A wish for the season itself takes the place of one for every season. */
function wishesFor({ wishes }: Garden, season: number): PlanWish[] {
  const own = wishes.filter((wish) => wish.season === season);
  const always = wishes.filter(
    (wish) => wish.season === undefined && own.every(({ cropId }) => cropId !== wish.cropId),
  );
  return [...own, ...always].map(({ cropId, amount }) => ({ cropId, season, amount }));
}

function planBed(input: PracticeInput, bed: Bed, seasons: readonly number[]): PlanBed {
  const { garden, climate, today } = input;
  const spans = cropSpans(garden, bed.id, climate);
  const lasting = spans.find(({ crop, to }) => isPermanent(crop) && to === undefined);
  const carried = spans
    .filter(({ crop }) => !isPermanent(crop))
    .map((span): Carried => {
      const { areaM2 } = span.planting;
      const share = areaM2 === undefined ? {} : { areaM2 };
      return { season: cropYear(span, climate), cropId: span.crop.id, ...share };
    });
  const there = firstSeasonOf(climate, bed);
  const past = carried.map(({ season }) => season).filter((season) => season < seasonAfter(climate, today));
  return {
    id: bed.id,
    name: bed.name,
    areaM2: Math.round(areaOf(bed) * 100) / 100,
    ...(lasting ? { lasting: lasting.crop.id } : {}),
    carried,
    ...heldBy(spans, climate, seasons, areaOf(bed)),
    closed: closedTo(input, bed, seasons, spans),
    covers: coversAhead(input, bed),
    ...(past.length > 0 ? { knownSince: Math.min(...past) } : {}),
    ...(there === undefined ? {} : { knownSince: NOTHING_BEFORE, thereFrom: there }),
  };
}

/** What is planned for shares of a bed, where some of it goes in after other is out: what they hold together at the most. */
function heldBy(
  spans: readonly CropSpan[],
  climate: Climate,
  seasons: readonly number[],
  bedM2: number,
): Pick<PlanBed, 'held'> {
  const held = seasons.flatMap((season): [number, number][] => {
    const here = spans.filter((span) => !isPermanent(span.crop) && cropYear(span, climate) === season);
    const atOnce = here.map(({ from }) =>
      here
        .filter((other) => other.from <= from && (other.to === undefined || other.to >= from))
        .reduce((sum, { planting }) => sum + (planting.areaM2 ?? bedM2), 0),
    );
    return here.length < 2 ? [] : [[season, Math.min(bedM2, Math.max(...atOnce))]];
  });
  return held.length === 0 ? {} : { held: Object.fromEntries(held) };
}

/** Crops that something found in a bed keeps out in the seasons planned, and those that were in it all the same. */
function closedTo(input: PracticeInput, bed: Bed, seasons: readonly number[], spans: readonly CropSpan[]): ClosedTo[] {
  const { garden, climate, today } = input;
  if (findingsIn(garden, bed.id).length === 0) return [];
  const coming = seasons.flatMap((season) =>
    vegetables.map((crop) => ({ crop, season, day: latestOf(today, firstDayOf(climate, crop, season)) })),
  );
  const carried = spans.map((span) => ({ crop: span.crop, season: cropYear(span, climate), day: span.from }));
  const isCarried = (each: { crop: Vegetable; season: number }) =>
    carried.some(({ crop, season }) => crop.id === each.crop.id && season === each.season);
  return [...carried, ...coming.filter((each) => !isCarried(each))].flatMap(({ crop, season, day }) => {
    const lock = cropLockOut(garden, bed.id, crop, day);
    return lock === undefined
      ? []
      : [{ cropId: crop.id, season, disease: lock.finding.name, why: sickReason(crop, lock) }];
  });
}

/** Why a disease keeps a crop out of a bed. */
export function sickReason(crop: Vegetable, { finding, until, source }: LockOut): Reason {
  const saw = {
    crop: crop.name.toLowerCase(),
    disease: finding.name,
    found: finding.found.on,
    ...(until === undefined ? {} : { until }),
  };
  return { rule: 'rotation-plan.disease', saw, source };
}

/** The first day on which a crop of a season may go in. */
function firstDayOf({ seasonTurn }: Climate, { maturityFrom }: Vegetable, season: number): Day {
  return maturityFrom === 'fall-set'
    ? dayOfIndex(seasonTurn, season - 1, AUTUMN_INDEX)
    : dayOfIndex(seasonTurn, season, 1);
}

/** Stands that are sown or meant to be, each by the season whose crops follow it. */
function coversAhead({ garden, climate }: PracticeInput, bed: Bed): CoverAhead[] {
  return inBed(garden.stands, bed.id)
    .filter((stand) => garden.skipped[sowKey(stand.id)] === undefined)
    .filter((stand) => standLockOut(garden, stand) === undefined)
    .map(({ coverId, sow }) => ({ season: seasonAfter(climate, sow.day), coverId }));
}
