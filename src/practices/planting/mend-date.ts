/**
 * A planting whose day no season bears out is asked after, in time to change the plan.
 */

import { addDays } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { insteadOf } from './later-crops.ts';
import { draftOfPlanting, type PlantingInBed } from './planting-in-bed.ts';

/** Days ahead of the planned day that the plan is asked after: time to get other seed. House default. */
const AHEAD_DAYS = 42;

/** The task that asks for another day or another crop. */
export function mendDateDraft(input: PracticeInput, at: PlantingInBed, why: Reason): TaskDraft {
  const { planting, bed, name } = at;
  const { day } = planting.start;
  return {
    ...draftOfPlanting(input, at),
    key: `mend-date/planting:${planting.id}`,
    kind: 'mend-date',
    job: { id: 'mend-date', title: 'Change the planned day' },
    weight: 'deadline',
    title: `Change the planned day: ${name} in ${bed.name}`,
    steps: [
      `Your plan has it on ${dated(day)}. Give it another day on the Beds page, or another crop.`,
      insteadOf(input, at, addDays(day, -1)),
    ],
    window: { earliest: addDays(day, -AHEAD_DAYS), preferred: addDays(day, -AHEAD_DAYS), latest: day },
    ifMissed: 'drop',
    missedNote: `The day is past, and the ${name} was put on no other: what was planned for ${bed.name} is lost.`,
    effortMinutes: LOOK_MINUTES,
    reasons: [why],
  };
}
