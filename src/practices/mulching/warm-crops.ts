/**
 * Warm crops: mulched only once the soil under them is warm.
 */
import { seasonOf } from '../../climate/season.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import type { Bed } from '../../garden/garden.ts';
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { addDays, clampDay, type Day, latestOf } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { type CropSpan, cropSpans } from '../bed-timeline.ts';
import type { TaskDraft } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { amountReason, CARRYING_CAUTIONS, draftOnBed, firstOfEach, mulchAmount, mulchSupply } from './mulch.ts';
import { WARM_SOIL_C } from './warm-soil.ts';

/**
 * Groups that are mulched in summer: long in the bed, wide apart, with the soil bare between them. Corn and beans shade
 * their own ground, potatoes are earthed up. House default.
 */
const MULCHED: ReadonlySet<RotationGroup> = new Set(['nightshade', 'cucurbit', 'mallow', 'morning-glory']);
/** Depth of straw, mm: 2–4 in (veg:V44). */
const STRAW_DEPTH_MM = 75;
/** Grass clippings in one layer, mm: ½–¾ in (veg:V44). */
const CLIPPINGS_DEPTH_MM = 15;
/** Days plants are left to take hold before they are mulched. House default. */
const TAKE_HOLD_DAYS = 14;
/** Days the work may wait once soil and plants are ready. House default. */
const OPEN_DAYS = 28;
/** Days after the soil is warm on which all warm beds are best mulched together. House default. */
const TOGETHER_DAYS = 14;
/** Days a crop must still stand to be worth mulching. House default. */
const LEAST_LEFT_DAYS = 28;

/** The summer mulch of a bed's warm crops. */
export function warmCropDrafts(input: PracticeInput, bed: Bed): TaskDraft[] {
  const warm = cropSpans(input.garden, bed.id, input.climate).filter(
    ({ crop }) => MULCHED.has(crop.rotationGroup) && isWarm(crop.frostClass),
  );
  return firstOfEach(warm, ({ from }) => seasonOf(input.climate.seasonTurn, from)).flatMap(
    (span) => warmDraft(input, bed, span) ?? [],
  );
}

function isWarm(frostClass: CropSpan['crop']['frostClass']): boolean {
  return frostClass === 'tender' || frostClass === 'very-tender';
}

function warmDraft(input: PracticeInput, bed: Bed, span: CropSpan): TaskDraft | undefined {
  const { climate } = input;
  const season = seasonOf(climate.seasonTurn, span.from);
  const warm = soilWarmOdds(climate, { season, tempC: WARM_SOIL_C }).median;
  if (warm === undefined) return undefined;
  const earliest = latestOf(warm, addDays(span.from, TAKE_HOLD_DAYS));
  if (span.to !== undefined && addDays(earliest, LEAST_LEFT_DAYS) > span.to) return undefined;
  return draftOf(input, bed, span, warm, earliest);
}

function draftOf(input: PracticeInput, bed: Bed, { planting, crop }: CropSpan, warm: Day, earliest: Day): TaskDraft {
  const name = crop.name.toLowerCase();
  const latest = addDays(earliest, OPEN_DAYS);
  return {
    ...draftOnBed(input, bed),
    key: `mulch-warm/planting:${planting.id}`,
    kind: 'mulch-warm-crop',
    job: { id: 'mulch-warm-crop', title: 'Mulch warm crops' },
    title: `Mulch the ${name} in ${bed.name}`,
    steps: [
      'Feel the soil first: while it is cold under your hand, wait. Weed, and water well.',
      `Lay straw or leaves between the plants, a hand clear of the stems: ${mulchAmount(bed, STRAW_DEPTH_MM)}.`,
      `Grass clippings instead go on in layers of ${quantity(CLIPPINGS_DEPTH_MM, 'mm')}, each dry before the next, from lawns with no weedkiller.`,
    ],
    cautions: CARRYING_CAUTIONS,
    supplies: [mulchSupply(bed, STRAW_DEPTH_MM)],
    window: { earliest, preferred: clampDay(addDays(warm, TOGETHER_DAYS), earliest, latest), latest },
    ifMissed: 'still do',
    missedNote: 'Bare soil dries out and splashes on leaves and fruit: mulch late rather than not at all, after rain.',
    after: [],
    reasons: [
      {
        rule: 'mulch-warm.soil',
        saw: { crop: name, tempC: WARM_SOIL_C, warm, planted: planting.start.day, days: TAKE_HOLD_DAYS },
        limit: earliest,
        source: 'from memory',
      },
      amountReason('mulch-warm.amount', bed, STRAW_DEPTH_MM, 'veg:V44'),
    ],
  };
}
