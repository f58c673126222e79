/**
 * A layer in spring: once the soil is awake, before the first crop or cover of the season, after a standing cover is
 * cut.
 */

import { dayOfIndex } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { addDays, clampDay, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { type CropSpan, cropSpans, soonest } from '../bed-timeline.ts';
import { clearingsOf } from '../clearing.ts';
import type { TaskKey } from '../draft.ts';
import { springTopdressKey } from '../keys.ts';
import type { CoverStanding, Findings, PracticeInput } from '../practice.ts';
import { isMidwinter, midsummerOf, SOIL_AWAKE_C, soilAwake } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import type { LayerWindow } from './layer-window.ts';

/** Days of spring in which the layer is best put on once the soil is awake. House default. */
const SPRING_DAYS = 28;
/** Days before a crop goes in that the layer should be on. No wait is needed (veg:V17); a week is for the work. */
const BEFORE_CROP_DAYS = 7;
/** Days after a cover's cut in which the layer may still go on, where no crop waits. House default. */
const AFTER_CUT_DAYS = 14;

/**
 * The spring window of a bed.
 *
 * @param ends a week before the first crop goes in, or, where the compost comes no sooner, up to the day before
 * @returns nothing where the soil never wakes, or a cover with no end stands in the bed
 */
export function springWindow(
  input: PracticeInput,
  found: Findings,
  bed: Bed,
  season: number,
  ends: 'a week before' | 'to the day' = 'a week before',
): LayerWindow | undefined {
  const awake = soilAwake(input.climate, season);
  if (awake === undefined) return undefined;
  const first = firstCrop(input, bed, season);
  const goesIn = soonest(first?.from, firstCover(found, bed, awake, midsummerOf(input.climate, season)));
  const closes = goesIn === undefined ? addDays(awake, SPRING_DAYS) : addDays(goesIn, -BEFORE_CROP_DAYS);
  const earliest = earliestOf(awake, addDays(closes, -BEFORE_CROP_DAYS));
  const covers = coversStanding(found, bed, earliest, closes);
  if (covers.some(({ ends }) => ends === undefined)) return undefined;
  const cuts = covers.filter(({ endKey }) => endKey !== undefined);
  const latest =
    goesIn === undefined
      ? latestOf(closes, ...cuts.map(afterCut))
      : ends === 'to the day'
        ? addDays(goesIn, -1)
        : closes;
  const before = cropsBefore(input, bed, latest);
  const next = first && first.from === goesIn ? { next: first.crop.name.toLowerCase(), day: first.from } : {};
  return {
    key: springTopdressKey(bed.id, season),
    half: 'spring',
    window: { earliest, preferred: clampDay(addDays(latest, -BEFORE_CROP_DAYS), earliest, latest), latest },
    after: [
      ...before.map((key) => ({ key, minDays: 0 })),
      ...cuts.flatMap(({ endKey }) => (endKey === undefined ? [] : [{ key: endKey, minDays: 0 }])),
      { key: awaitedSqueezeKey(input, textureOf(input.garden, bed), season), minDays: 0 },
    ],
    reasons: [
      {
        rule: 'topdress.spring',
        saw: { [isMidwinter(input.climate, awake) ? 'awakeSince' : 'awake']: awake, tempC: SOIL_AWAKE_C, ...next },
        limit: latest,
        source: 'house default',
      },
    ],
  };
}

/** The clearing of what stood in the bed before the layer: a crop kept over winter is lifted first. */
function cropsBefore({ garden, climate }: PracticeInput, bed: Bed, by: Day): TaskKey[] {
  const spans = cropSpans(garden, bed.id, climate);
  const before = spans
    .filter(({ from, to }) => from < by && to !== undefined && to <= by)
    .sort((a, b) => order(a.to ?? '', b.to ?? '') || order(a.planting.id, b.planting.id))
    .at(-1);
  return before === undefined ? [] : clearingsOf(spans, before);
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The first crop to go into the bed in the first half of a season. */
function firstCrop({ garden, climate }: PracticeInput, bed: Bed, season: number): CropSpan | undefined {
  const midwinter = dayOfIndex(climate.seasonTurn, season, 1);
  return cropSpans(garden, bed.id, climate).find(
    ({ from }) => from > midwinter && from <= midsummerOf(climate, season),
  );
}

/** The day the first cover still to be sown in spring may go in. */
function firstCover(found: Findings, bed: Bed, awake: Day, midsummer: Day): Day | undefined {
  const days = inBed(found.coverSowings, bed.id)
    .filter(({ half, earliest, latest }) => half === 'spring' && latest >= awake && earliest <= midsummer)
    .map(({ earliest }) => earliest);
  return days.sort()[0];
}

function coversStanding(found: Findings, bed: Bed, from: Day, to: Day): CoverStanding[] {
  return inBed(found.coverStands, bed.id)
    .filter(({ from: sown, ends }) => sown < to && (ends === undefined || ends >= from))
    .sort((a, b) => (a.standId < b.standId ? -1 : 1));
}

function afterCut({ ends }: CoverStanding): Day {
  return addDays(ends ?? '', AFTER_CUT_DAYS);
}
