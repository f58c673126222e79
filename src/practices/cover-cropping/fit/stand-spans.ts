/**
 * The days for which covers hold a bed.
 */
import type { Stand } from '../../../garden/garden.ts';
import type { Day } from '../../../measures/days.ts';
import { gapsOf } from '../../bed-timeline.ts';
import type { Window } from '../../draft.ts';
import type { PracticeInput } from '../../practice.ts';
import { standInBed } from '../stand.ts';
import { planStand } from '../stand-plan.ts';

/** A stand with the first day it may be in the ground and the last it is expected to hold the bed. */
export interface StandSpan {
  stand: Stand;
  from: Day;
  /** Absent while it has no end. */
  ends?: Day;
  /** The days in which it may be sown, while that is still to be done. */
  sow?: Window;
}

/** The stands of a bed that are in the ground or meant for it, in the order of their sowing. */
export function standSpans(input: PracticeInput, bedId: string): StandSpan[] {
  const bed = input.garden.beds.find(({ id }) => id === bedId);
  if (bed === undefined) return [];
  const gaps = gapsOf(input.garden, bedId, input.climate, input.garden.startedOn);
  return input.garden.stands
    .filter((stand) => stand.bedId === bedId)
    .map((stand) => planStand(input, standInBed(stand, bed), gaps))
    .flatMap(({ at, from, ends, sow }): StandSpan[] =>
      from === undefined
        ? []
        : [{ stand: at.stand, from, ...(ends === undefined ? {} : { ends }), ...(sow ? { sow: sow.window } : {}) }],
    )
    .sort((a, b) => (a.from < b.from ? -1 : 1));
}
