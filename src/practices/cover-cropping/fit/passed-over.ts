/**
 * The times to sow a cover that lie before the one it is chosen for.
 */
import { seasonOf } from '../../../climate/season.ts';
import { type Day, latestOf } from '../../../measures/days.ts';
import { coverParts } from '../../covers.ts';
import type { Window } from '../../draft.ts';
import type { PracticeInput } from '../../practice.ts';
import type { OpenSpan } from '../open-spans.ts';
import { type SowingHalf, sowingHalves, sowWindow } from '../sow-window.ts';
import { sowingsIn } from './sowings.ts';

/** A time to sow that is not taken: over before the bed is free, or open and yet not the best. */
export interface PassedOver {
  window: Window;
  half: SowingHalf;
  over: boolean;
  /** The first day the bed can be sown. */
  opens: Day;
}

/**
 * The times to sow a cover in the season in which a span opens and the next, up to a sowing day; oldest first. One that is
 * still open is given as the span leaves it, and only where there is room to grow.
 */
export function passedOver(input: PracticeInput, span: OpenSpan, coverId: string, sowOn: Day): PassedOver[] {
  const { climate, today } = input;
  const opens = latestOf(span.from ?? today, today);
  const parts = coverParts(coverId);
  const first = seasonOf(climate.seasonTurn, opens);
  const gone = [first, first + 1]
    .flatMap((season) => sowingHalves(parts).flatMap((half) => sowWindow(parts, half, season, input) ?? []))
    .filter(({ window }) => window.latest < opens && window.latest < sowOn)
    .map(({ window, half }): PassedOver => ({ window, half, over: true, opens }));
  const sowings = sowingsIn(input, span, parts, opens);
  const open = (typeof sowings === 'string' ? [] : sowings)
    .filter(({ sow: { window } }) => window.latest < sowOn)
    .map(({ sow: { window, half } }): PassedOver => ({ window, half, over: false, opens }));
  return [...gone, ...open].sort((a, b) => (a.window.latest < b.window.latest ? -1 : 1));
}
