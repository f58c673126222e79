/**
 * Which beds want compost for which season, when it can go on, and how much.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { dayOfIndex } from '../../climate/season.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import type { Bed, Stand, TopdressingHabit } from '../../garden/garden.ts';
import { addDays, clampDay, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { areaOf, type CropSpan, cropSpans, type Gap, gapsOf } from '../bed-timeline.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { clearKey, cutKey } from '../keys.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { MIDSUMMER_INDEX } from '../seasons.ts';

/** Yearly layer where the garden names none: half an inch (Oregon State, veg:V17, within ¼ to 1 in). House default. */
export const DEFAULT_HABIT: TopdressingHabit = { depthMm: 13, season: 'autumn' };
/** Layer above which compost builds up salts and phosphorus year on year (Minnesota, compost:S36: about 1 in). */
export const CEILING_MM = 25;
/** Soil temperature at which spring work on a bed begins: peas' minimum (veg:V2). House default. */
const SOIL_AWAKE_C = 4.4;
/** Days of spring in which the layer is best put on once the soil is awake. House default. */
const SPRING_DAYS = 28;
/** Days before a crop goes in that the layer should be on. No wait is needed (veg:V17); a week is for the work. */
const BEFORE_CROP_DAYS = 7;
/** Weeks before the median first freeze from which autumn work is done: a summer cover keeps the bed until then. House default. */
const AUTUMN_WEEKS = 8;
/** Days over which one topdressing serves. */
const SERVES_DAYS = 300;

/** One bed's want of compost for a season. */
export interface BedNeed {
  bed: Bed;
  season: number;
  litres: number;
  window: Window;
  after: TaskDraft['after'];
  reasons: readonly Reason[];
}

/** A layer over an area: litres = m² × mm. */
export function layerLitres(areaM2: number, depthMm: number): number {
  return areaM2 * depthMm;
}

/** What every bed wants for a season, where its window can still be met. */
export function seasonNeeds(input: PracticeInput, found: Findings, season: number): BedNeed[] {
  const habit = input.garden.topdressing ?? DEFAULT_HABIT;
  return input.garden.beds.flatMap((bed) => {
    const when = bedWindow(input, found, bed, season, habit);
    if (when === undefined || alreadyGiven(input, bed, when.window)) return [];
    return [{ bed, season, litres: Math.round(layerLitres(areaOf(bed), habit.depthMm)), ...when }];
  });
}

function alreadyGiven(input: PracticeInput, bed: Bed, window: Window): boolean {
  const since = addDays(window.latest, -SERVES_DAYS);
  return input.garden.topdressed.some((given) => given.bedId === bed.id && given.on >= since);
}

type When = Pick<BedNeed, 'window' | 'after' | 'reasons'>;

/** The window by the household's habit, or by the other half of the year where the bed is not free in the habit's. */
function bedWindow(
  input: PracticeInput,
  found: Findings,
  bed: Bed,
  season: number,
  habit: TopdressingHabit,
): When | undefined {
  const autumn = () => autumnWindow(input, found, bed, season);
  const spring = () => springWindow(input, bed, season);
  return habit.season === 'autumn' ? (autumn() ?? spring()) : (spring() ?? autumn());
}

/** In the autumn before a season: once the bed is clear, before its cover or winter crop goes in and the ground freezes. */
function autumnWindow(input: PracticeInput, found: Findings, bed: Bed, season: number): When | undefined {
  const { climate, garden } = input;
  const midsummer = dayOfIndex(climate.seasonTurn, season - 1, MIDSUMMER_INDEX);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 24, season: season - 1, chancePercent: 50 });
  const light = freezeDay(climate, { event: 'first-autumn', limitF: 32, season: season - 1, chancePercent: 50 });
  if (freeze === undefined || light === undefined) return undefined;
  const gap = gapsOf(garden, bed.id, climate, midsummer).find((row) => isAutumnGap(row, midsummer, freeze));
  if (gap === undefined || standing(garden.stands, bed, midsummer, freeze)) return undefined;
  const opens = latestOf(gap.from ?? midsummer, addDays(light, -7 * AUTUMN_WEEKS));
  const sowing = found.coverSowings.find((row) => row.bedId === bed.id && row.latest >= opens && row.latest <= freeze);
  const closes = earliestOf(freeze, sowing?.latest ?? freeze, gap.to ?? freeze);
  if (closes < opens) return undefined;
  const preferred = clampDay(sowing ? earliestOf(sowing.earliest, closes) : addDays(opens, 3), opens, closes);
  return {
    window: { earliest: opens, preferred, latest: closes },
    after: gap.before ? [{ key: clearKey(gap.before.planting.id), minDays: 0 }] : [],
    reasons: [
      {
        rule: 'topdress.autumn',
        saw: {
          opens,
          freeze,
          ...(gap.before?.to ? { before: gap.before.crop.name.toLowerCase(), out: gap.before.to } : {}),
        },
        limit: closes,
        source: 'house default',
      },
    ],
  };
}

function isAutumnGap(gap: Gap, midsummer: Day, freeze: Day): boolean {
  const from = gap.from ?? midsummer;
  return (
    from < freeze && (gap.to === undefined || gap.to > from) && (gap.to ?? freeze) > midsummer && from >= midsummer
  );
}

/** Whether a cover sown before autumn ends already holds the bed: compost then waits for spring. */
function standing(stands: readonly Stand[], bed: Bed, from: Day, to: Day): boolean {
  return stands.some(
    ({ bedId, sow, cutOn, deadOn }) =>
      bedId === bed.id &&
      sow.happened &&
      sow.day >= from &&
      sow.day <= to &&
      cutOn === undefined &&
      deadOn === undefined,
  );
}

/** In spring: once the soil is awake, before the first crop of the season, after a standing cover is cut. */
function springWindow(input: PracticeInput, bed: Bed, season: number): When | undefined {
  const { climate, garden } = input;
  const awake = soilWarmOdds(climate, { season, tempC: SOIL_AWAKE_C }).median;
  if (awake === undefined) return undefined;
  const midsummer = dayOfIndex(climate.seasonTurn, season, MIDSUMMER_INDEX);
  const first = firstCrop(cropSpans(garden, bed.id, climate), awake, midsummer);
  const closes = first ? addDays(first.from, -BEFORE_CROP_DAYS) : addDays(awake, SPRING_DAYS);
  const latest = latestOf(awake, closes);
  const cover = garden.stands.find(
    ({ bedId, sow, cutOn, deadOn }) =>
      bedId === bed.id &&
      sow.day < awake &&
      sow.day > addDays(awake, -SERVES_DAYS) &&
      cutOn === undefined &&
      deadOn === undefined,
  );
  return {
    window: { earliest: awake, preferred: clampDay(addDays(latest, -BEFORE_CROP_DAYS), awake, latest), latest },
    after: cover ? [{ key: cutKey(cover.id), minDays: 0 }] : [],
    reasons: [
      {
        rule: 'topdress.spring',
        saw: { awake, tempC: SOIL_AWAKE_C, ...(first ? { next: first.crop.name.toLowerCase(), day: first.from } : {}) },
        limit: latest,
        source: 'house default',
      },
    ],
  };
}

function firstCrop(spans: readonly CropSpan[], awake: Day, midsummer: Day): CropSpan | undefined {
  return spans.find((span) => span.from >= addDays(awake, BEFORE_CROP_DAYS) && span.from <= midsummer);
}
