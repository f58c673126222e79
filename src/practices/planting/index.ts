/**
 * Planting: seed tested and ordered in time; every crop of the plan raised, hardened off, sown or set out inside the days that its season and its bed
 * allow, and its seed kept moist until it is up.
 */
import type { Bed } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import type { TaskDraft, Window } from '../draft.ts';
import { lockedPlantings } from '../lock-out.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { isRaised } from './grown-by.ts';
import { keepMoistDraft } from './keep-moist.ts';
import { mendDateDraft } from './mend-date.ts';
import { plannedStart } from './planned-day.ts';
import { type PlantingInBed, plantingsIn } from './planting-in-bed.ts';
import { hardenedFirst, raiseDrafts } from './raise-drafts.ts';
import { seedDrafts } from './seed-drafts.ts';
import { seedSentences } from './seed-sentences.ts';
import { plantingSentences } from './sentences.ts';
import { ideaDrafts } from './sow-ideas.ts';
import { startDraft } from './start-draft.ts';

/** The planting practice. */
export const planting: Practice = {
  name: 'planting',
  work: (input) => ({
    drafts: [
      ...seedDrafts(input),
      ...input.garden.beds.flatMap((bed) => openPlantings(input, bed).flatMap((at) => draftsOfPlanting(input, at))),
      ...ideaDrafts(input),
    ],
  }),
  sentences: { ...seedSentences, ...plantingSentences },
};

/** The plantings of a bed but those a disease found there keeps out: their plan is settled again before anything else. */
function openPlantings(input: PracticeInput, bed: Bed): PlantingInBed[] {
  const locked = new Set(lockedPlantings(input.garden, bed.id).map(({ planting: { id } }) => id));
  return plantingsIn(input, bed).filter(({ planting: { id } }) => !locked.has(id));
}

function draftsOfPlanting(input: PracticeInput, at: PlantingInBed): TaskDraft[] {
  const { start, lastHarvest } = at.planting;
  if (start.happened) return lastHarvest?.happened === true ? [] : some(keepMoistDraft(input, at, onlyOn(start.day)));
  const planned = plannedStart(input, at);
  if ('refused' in planned) return [mendDateDraft(input, at, planned.refused)];
  const { window } = planned.start;
  const raised = isRaised(at);
  return [
    ...(raised ? raiseDrafts(input, at, window) : []),
    startDraft(input, at, planned.start, raised ? hardenedFirst(at) : []),
    ...some(keepMoistDraft(input, at, window)),
  ];
}

function onlyOn(day: Day): Window {
  return { earliest: day, preferred: day, latest: day };
}

function some<T>(value: T | undefined): T[] {
  return value === undefined ? [] : [value];
}
