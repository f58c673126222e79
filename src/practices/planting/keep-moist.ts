/**
 * Seed in the ground is kept moist until it is up. Every sowing has a step that says so. Small seed that is slow, which lies
 * shallow and dries out first, has a look of its own; any other seed has one where the top of its bed is reckoned to dry
 * before it is up.
 */

import { EMERGENCE_SOURCE } from '../../handbook/emergence.ts';
import { addDays, type Day, daysBetween, earliestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { sowCropKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { type DryRows, dryRows } from './dry-rows.ts';
import { expectedUp } from './emergence.ts';
import { draftOfPlanting, isSeed, type PlantingInBed } from './planting-in-bed.ts';

/** Days to emergence from which seed is looked after by a task of its own. House default. */
const SLOW_DAYS = 10;
/** Days after sowing at which the first look is due: by then a dry spell has reached the seed. House default. */
const FIRST_LOOK_DAYS = 3;
/** Days past the expected one after which seed is given up. House default. */
const GIVE_UP_DAYS = 7;

/**
 * The look at seed, for a sowing planned in a window or done on a day. Nothing for plants, nor for quick kinds that are
 * not sown yet, stand in a watered bed, or are up before it dries.
 */
export function keepMoistDraft(input: PracticeInput, at: PlantingInBed, sown: Window): TaskDraft | undefined {
  const { planting, bed, crop } = at;
  const up = isSeed(at) ? expectedUp(input.climate, planting.cropId, sown.preferred) : undefined;
  if (up === undefined) return undefined;
  const { happened } = planting.start;
  const dry = happened ? dryRows(input, bed, sown.preferred, up) : undefined;
  const isSlow = crop.smallSeed && daysBetween(sown.preferred, up) >= SLOW_DAYS;
  return isSlow || (dry !== undefined && !bed.watered) ? lookDraft(input, at, sown, { up, dry, isSlow }) : undefined;
}

function lookDraft(
  input: PracticeInput,
  at: PlantingInBed,
  sown: Window,
  { up, dry, isSlow }: { up: Day; dry: DryRows | undefined; isSlow: boolean },
): TaskDraft {
  const { planting, bed, name } = at;
  const days = daysBetween(sown.preferred, up);
  const saw = { crop: name, sown: sown.preferred, up, days };
  const dries: Reason[] =
    dry === undefined
      ? []
      : [{ rule: 'up.dries', saw: { day: dry.day, goneMm: dry.goneMm, years: dry.years }, source: 'agro:S1' }];
  return {
    ...draftOfPlanting(input, at),
    key: `keep-moist/planting:${planting.id}`,
    kind: 'keep-moist',
    job: { id: 'keep-moist', title: 'Keep the seed moist until it is up' },
    weight: 'check',
    title: `Keep the ${name} seed in ${bed.name} moist until it is up`,
    steps: [
      `Feel the soil over the rows every other day until the seed is up, about ${dated(up)}; water with a fine rose before it dries.`,
      'A board or a sack over the rows keeps them moist: lift it the day the first green shows.',
      `Nothing to see by ${dated(addDays(up, GIVE_UP_DAYS))}: sow again.`,
    ],
    supplies: [{ what: 'watering can' }],
    window: lookWindow(sown, days, dry?.day, isSlow && dry?.again !== true),
    ifMissed: 'drop',
    missedNote: 'Seed that dried out once it had begun to sprout is lost: if rows stay bare, sow again.',
    minder: `Water the rows of ${name} seed in ${bed.name} with a fine rose on every dry day until green shows.`,
    effortMinutes: LOOK_MINUTES,
    after: planting.start.happened ? [] : [{ key: sowCropKey(planting.id), minDays: FIRST_LOOK_DAYS }],
    reasons: [...dries, { rule: 'up.expected', saw, source: EMERGENCE_SOURCE }],
  };
}

/**
 * From a few days after sowing until it is up, sooner where the rows dry sooner; for kinds that are only looked at because
 * they dry, and for rows wetted again, from then on.
 */
function lookWindow(sown: Window, days: number, dry: Day | undefined, isSlow: boolean): Window {
  const latest = addDays(sown.latest, days);
  if (dry !== undefined && !isSlow) return { earliest: dry, preferred: dry, latest };
  const look = (day: Day): Day => earliestOf(addDays(day, FIRST_LOOK_DAYS), dry ?? latest);
  return { earliest: look(sown.earliest), preferred: look(sown.preferred), latest };
}
