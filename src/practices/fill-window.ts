/**
 * When a new bed is filled: soil is moved when it is neither wet nor frozen, by the day the bed is to be there, ahead of
 * the first crop or cover in it.
 */
import { freezeDay } from '../climate/freeze.ts';
import { seasonOf } from '../climate/season.ts';
import type { Bed } from '../garden/garden.ts';
import { isStillToBeMade } from '../garden/planned-beds.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import { addDays, clampDay, type Day, earliestOf, latestOf } from '../measures/days.ts';
import { type BedFill, type BedToFill, bedFill } from './bed-fill.ts';
import { coverName } from './covers.ts';
import type { TaskKey, Window } from './draft.ts';
import { fillKey } from './keys.ts';
import type { PracticeInput } from './practice.ts';
import { seasonAfter } from './seasons.ts';
import { readyOdds } from './soil-class.ts';
import { lastTest, VERY_HIGH_PHOSPHORUS_PPM } from './soil-test.ts';

/** Days before a new bed is to be there in which it is filled. House default. */
const FILLING_DAYS = 28;
/** Days before that day on which it is best done: it settles and is watered in. House default. */
const SETTLING_DAYS = 7;
/** Days before the day it is planned for within which the waking of the soil is worth telling. House default. */
const FIT_TOLD_DAYS = 60;
/** Days in which it is filled once the soil is fit, where the bed was to be there before that. House default. */
const LATE_DAYS = 14;

/** A planned bed with its time. */
export interface BedFilling {
  key: TaskKey;
  bed: Bed & { plannedFor: Day };
  size: BedToFill;
  /** The season whose crops it is filled for. */
  season: number;
  window: Window;
  /** The median day the soil is fit to be moved, where that is shortly before or after its day, and how many years say so. */
  fit?: { day: Day; years: number };
  /** The hard freeze it is filled before, where that comes ahead of the day it is planned for. */
  freeze?: Day;
  /** The first thing to go into it. */
  first?: { what: string; day: Day };
  /** Whether the ground is very high in phosphorus. */
  phosphorusPpm?: number;
}

/** Every bed still to be filled, in the order of their days. */
export function bedFillings(input: PracticeInput): BedFilling[] {
  return input.garden.beds
    .flatMap((bed) => bedFilling(input, bed) ?? [])
    .sort((a, b) =>
      a.window.preferred === b.window.preferred ? order(a.key, b.key) : order(a.window.preferred, b.window.preferred),
    );
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The filling of a bed; nothing for one that is there. */
export function bedFilling(input: PracticeInput, bed: Bed): BedFilling | undefined {
  const { garden, climate } = input;
  const { plannedFor, depthM, lengthM, widthM, pathsM2 } = bed;
  if (!isStillToBeMade(bed) || plannedFor === undefined || depthM === undefined) return undefined;
  const first = firstIn(input, bed);
  const ppm = lastTest(garden, bed.id, (test) => test.phosphorusPpm);
  return {
    key: fillKey(bed.id),
    bed: { ...bed, plannedFor },
    size: { lengthM, widthM, depthM, ...(pathsM2 === undefined ? {} : { pathsM2 }) },
    season: seasonAfter(climate, plannedFor),
    ...timeOf(input, plannedFor),
    ...(first === undefined ? {} : { first }),
    ...(ppm !== undefined && ppm >= VERY_HIGH_PHOSPHORUS_PPM ? { phosphorusPpm: ppm } : {}),
  };
}

/** What a bed is filled with where so much of the yard's compost is free. */
export function fillOf({ size, phosphorusPpm }: BedFilling, freeCompostL: number): BedFill {
  return bedFill(size, { freeCompostL, phosphorus: phosphorusPpm !== undefined });
}

/**
 * By the day it is planned for; before a hard freeze that comes sooner, and not before the soil is fit in spring. Where
 * that is too late, before the freeze of the autumn behind it, as long as that is still to come.
 */
function timeOf(
  { garden, climate, today }: PracticeInput,
  plannedFor: Day,
): Pick<BedFilling, 'window' | 'fit' | 'freeze'> {
  const season = seasonOf(climate.seasonTurn, plannedFor);
  const { median: awake, years } = readyOdds({ garden, climate }, garden.place.soilTexture, season);
  const hardIn = (autumn: number): Day | undefined =>
    freezeDay(climate, { event: 'first-autumn', limitF: 24, season: autumn, chancePercent: 50 });
  const [before, hard] = [hardIn(season - 1), hardIn(season)];
  if (awake !== undefined && awake > plannedFor && before !== undefined && before > today && before < plannedFor)
    return { window: upTo(before, addDays(before, -FILLING_DAYS)), freeze: before };
  const freeze = hard !== undefined && hard < plannedFor ? { freeze: hard } : {};
  const latest = earliestOf(plannedFor, hard ?? plannedFor);
  const opens = addDays(latest, -FILLING_DAYS);
  const fit = awake !== undefined && awake > addDays(latest, -FIT_TOLD_DAYS) ? { fit: { day: awake, years } } : {};
  const earliest = latestOf(opens, awake ?? opens);
  if (earliest > latest) {
    const last = addDays(earliest, LATE_DAYS);
    return { window: { earliest, preferred: addDays(earliest, SETTLING_DAYS), latest: last }, ...fit, ...freeze };
  }
  return { window: upTo(latest, earliest), ...fit, ...freeze };
}

/** A window that closes on a day, best used while the soil can still settle. */
function upTo(latest: Day, earliest: Day): Window {
  return { earliest, preferred: clampDay(addDays(latest, -SETTLING_DAYS), earliest, latest), latest };
}

function firstIn({ garden }: PracticeInput, { id }: Bed): BedFilling['first'] {
  const crops = garden.plantings.map(({ bedId, cropId, start: { day } }) => ({
    bedId,
    what: vegetableById(cropId).name.toLowerCase(),
    day,
  }));
  const covers = garden.stands.map(({ bedId, coverId, sow: { day } }) => ({ bedId, what: coverName(coverId), day }));
  const [first] = [...crops, ...covers]
    .filter(({ bedId }) => bedId === id)
    .sort((a, b) => order(a.day, b.day) || order(a.what, b.what));
  return first && { what: first.what, day: first.day };
}
