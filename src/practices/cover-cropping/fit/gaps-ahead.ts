/**
 * The gaps of a bed for two years ahead.
 */

import type { Bed } from '../../../garden/garden.ts';
import { inBed } from '../../../garden/in-bed.ts';
import { gapsOf } from '../../bed-timeline.ts';
import type { PracticeInput } from '../../practice.ts';
import { type OpenSpan, openSpans } from '../open-spans.ts';
import { standInBed } from '../stand.ts';
import { planStand } from '../stand-plan.ts';
import { lastDayAhead } from './last-day-ahead.ts';

/**
 * The spans of a bed with no crop in it and no cover that was sown, from today for two years, oldest first. The last is
 * open-ended where nothing is planned after it. A stand that is only planned leaves its gap open: it may be thought over.
 */
export function gapsAhead(input: PracticeInput, bed: Bed): OpenSpan[] {
  const { garden, climate, today } = input;
  const gaps = gapsOf(garden, bed.id, climate, today);
  const sown = inBed(garden.stands, bed.id)
    .filter((stand) => stand.sow.happened)
    .map((stand) => planStand(input, standInBed(stand, bed), gaps));
  return gaps
    .flatMap((gap) => openSpans(gap, sown))
    .filter(({ from, to }) => (from === undefined || from <= lastDayAhead(today)) && (to ?? today) >= today)
    .filter(({ from, to }) => from === undefined || to === undefined || from < to);
}
