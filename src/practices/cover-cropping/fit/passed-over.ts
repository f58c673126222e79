/**
 * The times to sow a cover that lie before the one it is chosen for.
 */
import { seasonOf } from '../../../climate/season.ts';
import { type Day, latestOf } from '../../../measures/days.ts';
import { coverParts } from '../../covers.ts';
import type { Window } from '../../draft.ts';
import type { PracticeInput } from '../../practice.ts';
import type { OpenSpan } from '../open-spans.ts';
import { sowingHalves, sowWindow } from '../sow-window.ts';

/** A time to sow that is not taken: over before the bed is free, or open and yet not the best. */
export interface PassedOver {
  window: Window;
  over: boolean;
  /** The first day the bed can be sown. */
  opens: Day;
}

/** The times to sow a cover in the season in which a span opens and the next, up to a sowing day; oldest first. */
export function passedOver(input: PracticeInput, span: OpenSpan, coverId: string, sowOn: Day): PassedOver[] {
  const { climate, today } = input;
  const opens = latestOf(span.from ?? today, today);
  const parts = coverParts(coverId);
  const first = seasonOf(climate.seasonTurn, opens);
  return [first, first + 1]
    .flatMap((season) => sowingHalves(parts).flatMap((half) => sowWindow(parts, half, season, input) ?? []))
    .filter(({ window }) => window.latest < sowOn)
    .map(({ window }) => ({ window, over: window.latest < opens, opens }))
    .sort((a, b) => (a.window.latest < b.window.latest ? -1 : 1));
}
