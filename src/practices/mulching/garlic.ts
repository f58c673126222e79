/**
 * Garlic: mulched once hard cold has come, uncovered when it wakes.
 */

import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Bed, Planting } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import { MOULDY } from '../cautions.ts';
import type { TaskDraft } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter, SOIL_AWAKE_C, soilAwake } from '../seasons.ts';
import { amountReason, CARRYING_CAUTIONS, draftOnBed, firstOfEach, mulchAmount, mulchSupply } from './mulch.ts';

/** Depth of the mulch, mm: 3–4 in (veg:V41); 2 in will do (veg:V42). */
const GARLIC_DEPTH_MM = 90;
/** Days garlic has to root before it is covered, and in which it then is: 2–4 weeks after planting. From memory. */
const AFTER_PLANTING_DAYS = 14;
const OPEN_DAYS = 14;
/** Days into the window at which it is best laid. House default. */
const BEST_DAYS = 4;
/** Days after the soil wakes in which garlic is uncovered, and the day of them that suits best. House default. */
const UNCOVER_DAYS = { best: 4, last: 21 } as const;

/** Both tasks of a bed's garlic. */
export function garlicDrafts(input: PracticeInput, bed: Bed): TaskDraft[] {
  const { climate, garden } = input;
  const cloves = inBed(garden.plantings, bed.id)
    .filter(({ cropId }) => vegetableById(cropId).maturityFrom === 'fall-set')
    .sort((a, b) => (a.start.day === b.start.day ? (a.id < b.id ? -1 : 1) : a.start.day < b.start.day ? -1 : 1));
  return firstOfEach(cloves, ({ start }) => seasonOf(climate.seasonTurn, start.day)).flatMap((planting) =>
    bothDrafts(input, bed, planting),
  );
}

function bothDrafts(input: PracticeInput, bed: Bed, planting: Planting): TaskDraft[] {
  const { climate, garden } = input;
  const set = planting.start.day;
  const season = seasonOf(climate.seasonTurn, set);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 24, season, chancePercent: 50 });
  if (freeze === undefined) return [];
  const mulch = mulchDraft(input, bed, planting, freeze);
  const awake = soilAwake(climate, season + 1);
  const bare = awake === undefined || awake < mulch.window.latest || garden.skipped[mulch.key] !== undefined;
  return bare ? [mulch] : [mulch, uncoverDraft(input, bed, planting, awake, mulch)];
}

function mulchDraft(input: PracticeInput, bed: Bed, { id, cropId, start }: Planting, freeze: Day): TaskDraft {
  const name = vegetableById(cropId).name.toLowerCase();
  const earliest = latestOf(addDays(start.day, AFTER_PLANTING_DAYS), freeze, ...laterBegun(input, start.day));
  const latest = addDays(earliest, OPEN_DAYS);
  return {
    ...draftOnBed(input, bed),
    key: `mulch-garlic/planting:${id}`,
    kind: 'mulch-garlic',
    job: { id: 'mulch-garlic', title: `Mulch the ${name} for winter` },
    title: `Mulch the ${name} in ${bed.name} for winter`,
    steps: [
      'Wait until hard nights have chilled the soil: a mulch laid on warm soil is a home for voles.',
      `Lay leaves or straw over the whole bed, loosely: ${mulchAmount(bed, GARLIC_DEPTH_MM)}.`,
      'What was raked aside at planting counts towards it. Weigh it down with sticks or a net.',
    ],
    cautions: CARRYING_CAUTIONS,
    supplies: [mulchSupply(bed, GARLIC_DEPTH_MM), { what: 'barrow and rake' }],
    window: { earliest, preferred: addDays(earliest, BEST_DAYS), latest },
    ifMissed: 'still do',
    missedNote: 'Frost and thaw heave cloves out of bare ground: cover it late rather than not at all.',
    after: [],
    reasons: [
      {
        rule: 'mulch-garlic.freeze',
        saw: { crop: name, planted: start.day, days: AFTER_PLANTING_DAYS, freeze },
        limit: latest,
        source: 'from memory',
      },
      amountReason('mulch-garlic.amount', bed, GARLIC_DEPTH_MM, 'veg:V41'),
    ],
  };
}

/**
 * The day a garden was begun, where that lies between the planting and midwinter: late is better than not at all while
 * the winter that heaves cloves is still ahead. House default.
 */
function laterBegun({ garden: { startedOn }, climate }: PracticeInput, set: Day): Day[] {
  return startedOn > set && startedOn < midwinterAfter(climate, set) ? [startedOn] : [];
}

function uncoverDraft(
  input: PracticeInput,
  bed: Bed,
  { id, cropId }: Planting,
  awake: Day,
  mulch: TaskDraft,
): TaskDraft {
  const name = vegetableById(cropId).name.toLowerCase();
  const latest = addDays(awake, UNCOVER_DAYS.last);
  return {
    ...draftOnBed(input, bed),
    key: `uncover-garlic/planting:${id}`,
    kind: 'uncover-garlic',
    job: { id: 'uncover-garlic', title: `Uncover the ${name}` },
    title: `Uncover the ${name} in ${bed.name}`,
    steps: [
      'Draw the mulch off the shoots and lay it between the rows, where it keeps weeds down.',
      'Keep some beside the bed to throw back over young shoots before a hard night.',
      'Lift a corner and look for slugs; pick off what you find.',
    ],
    cautions: [MOULDY],
    supplies: [{ what: 'rake' }],
    window: { earliest: awake, preferred: addDays(awake, UNCOVER_DAYS.best), latest },
    ifMissed: 'still do',
    missedNote: 'Under wet mulch shoots grow pale and bent, and necks rot: draw it off as soon as you can.',
    // A covering whose days were over before the garden began is no task to wait for.
    after: mulch.window.latest < input.garden.startedOn ? [] : [{ key: mulch.key, minDays: 0 }],
    reasons: [
      {
        rule: 'uncover-garlic.awake',
        saw: { crop: name, tempC: SOIL_AWAKE_C, awake },
        limit: latest,
        source: 'common practice',
      },
    ],
  };
}
