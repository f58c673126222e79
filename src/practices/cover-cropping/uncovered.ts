/**
 * Bare ground: the days for which no cover is sown in a bed, and why, handed on so that mulch can answer.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { coverName } from '../covers.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput, Uncovered } from '../practice.ts';
import { midwinterAfter } from '../seasons.ts';
import { gapReasons } from './bed-gap.ts';
import { LEAST_STAND_DAYS } from './fit/sowings.ts';
import { type Suggestion, suggestedStand } from './gap-suggestion.ts';
import { waitsForClearing } from './in-its-place.ts';
import { lastCoverDay } from './last-cover.ts';
import type { OpenSpan } from './open-spans.ts';
import { freezesKnown } from './sow-window.ts';

/** The rule by which a bed lies bare only from the day its suggested sowing closed. */
const LAPSED = 'cover-none.lapsed';

/**
 * The part of an open span that stays bare: all of it where no cover is suggested, and the days up to the suggested
 * sowing where a winter comes first.
 *
 * @returns nothing where the span gets its cover in time, or no freeze date is known to tell covers by
 */
export function uncoveredPart(
  input: PracticeInput,
  bed: Bed,
  span: OpenSpan,
  next: Suggestion | undefined,
): Uncovered | undefined {
  const { climate, garden } = input;
  const start = latestOf(span.from ?? garden.startedOn, garden.startedOn);
  const to = next?.sow.window.earliest ?? span.to;
  if (!freezesKnown(climate, seasonOf(climate.seasonTurn, start))) return undefined;
  if (next !== undefined && next.sow.window.earliest <= midwinterAfter(climate, start)) return undefined;
  const why = whyBare(input, bed, span, start);
  const from = why.rule === LAPSED && typeof why.limit === 'string' ? addDays(why.limit, 1) : span.from;
  return {
    bedId: bed.id,
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    why: [...(span.failed ? [span.failed] : []), why, ...gapReasons(span)],
    onResidue: span.onResidue === true,
    after: waitsForClearing(span),
  };
}

/** Told from the day the span opens, so that the reason does not change as days pass. */
function whyBare(input: PracticeInput, bed: Bed, span: OpenSpan, start: Day): Reason {
  const { climate } = input;
  const winter = midwinterAfter(climate, start);
  const first = suggestedStand(input, bed, span, start);
  if (first !== undefined && first.sow.window.earliest <= winter) {
    const cover = coverName(first.at.stand.coverId);
    return { rule: LAPSED, saw: { cover }, limit: first.sow.window.latest, source: 'house default' };
  }
  const days = span.to === undefined ? undefined : daysBetween(start, span.to);
  if (days !== undefined && days < LEAST_STAND_DAYS) {
    return { rule: 'cover-none.too-short', saw: { days }, limit: LEAST_STAND_DAYS, source: 'house default' };
  }
  const season = seasonOf(climate.seasonTurn, start);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  const last = lastCoverDay(input, season);
  if (freeze !== undefined && last !== undefined && start > last) {
    return { rule: 'cover-none.too-late', saw: { from: start, freeze }, limit: last, source: 'cover:S4b' };
  }
  return { rule: 'cover-none.none-fits', saw: {}, source: 'house default' };
}
