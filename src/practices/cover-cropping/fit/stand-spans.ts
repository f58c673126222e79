/**
 * The days for which covers hold a bed.
 */

import type { Stand } from '../../../garden/garden.ts';
import { inBed } from '../../../garden/in-bed.ts';
import type { Day } from '../../../measures/days.ts';
import { gapsOf } from '../../bed-timeline.ts';
import type { Window } from '../../draft.ts';
import type { PracticeInput } from '../../practice.ts';
import { orderKey } from '../sow-drafts.ts';
import type { SowingHalf } from '../sow-window.ts';
import { standInBed } from '../stand.ts';
import type { StandPlan } from '../stand-life.ts';
import { planStand } from '../stand-plan.ts';

/** A stand with the first day it may be in the ground and the last it is expected to hold the bed. */
export interface StandSpan {
  stand: Stand;
  from: Day;
  /** Absent while it has no end. */
  ends?: Day;
  /** The days in which it may be sown, while that is still to be done. */
  sow?: Window;
  sowing?: Sowing;
}

/** A sowing still to be done. */
interface Sowing {
  /** The day it is reckoned with. */
  on: Day;
  half: SowingHalf;
  /** The last day to order its seed, as its task has it; absent where none is to be ordered any more. */
  orderBy?: Day;
}

/** The stands of a bed that are in the ground or meant for it, in the order of their sowing. */
export function standSpans(input: PracticeInput, bedId: string): StandSpan[] {
  const bed = input.garden.beds.find(({ id }) => id === bedId);
  if (bed === undefined) return [];
  const gaps = gapsOf(input.garden, bedId, input.climate, input.garden.startedOn);
  return inBed(input.garden.stands, bedId)
    .map((stand) => planStand(input, standInBed(stand, bed), gaps))
    .flatMap((plan): StandSpan[] => {
      const { at, from, ends, sow } = plan;
      if (from === undefined) return [];
      const until = ends === undefined ? {} : { ends };
      return [{ stand: at.stand, from, ...until, ...(sow ? { sow: sow.window } : {}), ...sowingOf(plan) }];
    })
    .sort((a, b) => (a.from < b.from ? -1 : 1));
}

function sowingOf({ at: { stand }, sow, sowOn, drafts }: StandPlan): { sowing?: Sowing } {
  if (sow === undefined || sowOn === undefined) return {};
  const orderBy = drafts.find(({ key }) => key === orderKey(stand.id))?.window.latest;
  return { sowing: { on: sowOn, half: sow.half, ...(orderBy === undefined ? {} : { orderBy }) } };
}
