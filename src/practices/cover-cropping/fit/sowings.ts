/**
 * The times a cover could be sown in a gap, early enough to grow before what follows.
 */
import { freezeDay } from '../../../climate/freeze.ts';
import { seasonOf } from '../../../climate/season.ts';
import { addDays, type Day, latestOf } from '../../../measures/days.ts';
import { soonest } from '../../bed-timeline.ts';
import type { CoverPart } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { midwinterAfter, midwinterBefore } from '../../seasons.ts';
import type { OpenSpan } from '../open-spans.ts';
import { daysToNextCover, settleDays } from '../settle.ts';
import { heldBetween, type SowWindow, sowingHalves, sowWindow } from '../sow-window.ts';
import { killedOn, winterFate } from '../winter.ts';

/** Days a stand must grow to have been worth the seed. House default: buckwheat's 40 warm days (cover:S4a). */
export const LEAST_STAND_DAYS = 40;

/** Days before a warm cover's last day that its span must open: in a later one a cover for winter serves. House default. */
const WARM_SPAN_OPENS_DAYS = 28;

/** A sowing that fits between the crops. */
export interface Sowing {
  sow: SowWindow;
  season: number;
}

/** Why a cover cannot be sown in a gap: its times lie elsewhere, or leave it too little room before what follows. */
export type NoSowing = 'never then' | 'no room';

/**
 * The sowings of a gap that are still open on a day, in this season and the next, soonest first; or why there is none.
 */
export function sowingsIn(
  input: PracticeInput,
  span: OpenSpan,
  parts: readonly CoverPart[],
  from: Day,
): Sowing[] | NoSowing {
  const first = seasonOf(input.climate.seasonTurn, from);
  const rules = [first, first + 1].flatMap((season) =>
    sowingHalves(parts).flatMap((half): Sowing[] => {
      const rule = sowWindow(parts, half, season, input);
      const sow = rule && heldBetween(rule, span.from, span.to && addDays(span.to, -1));
      return sow === undefined || sow.window.latest < from ? [] : [{ sow, season }];
    }),
  );
  const held = rules.flatMap(({ sow, season }): Sowing[] => {
    const within = heldBetween(sow, undefined, lastDay(input, span, parts, { sow, season }));
    return within === undefined || within.window.latest < from ? [] : [{ sow: within, season }];
  });
  if (held.length > 0) return held.sort((a, b) => (a.sow.window.preferred < b.sow.window.preferred ? -1 : 1));
  return rules.length === 0 ? 'never then' : 'no room';
}

/** The day a gap opens. */
export function opensOn({ garden }: PracticeInput, span: OpenSpan): Day {
  return latestOf(span.from ?? garden.startedOn, garden.startedOn);
}

/** The day a gap opens as a sowing sees it: the winter before it decides nothing. */
export function opensFor(input: PracticeInput, span: OpenSpan, { window }: SowWindow): Day {
  return latestOf(opensOn(input, span), midwinterBefore(input.climate, window.earliest));
}

/** Winters that go by over the open bed before a day. */
export function wintersBefore(input: PracticeInput, span: OpenSpan, day: Day): number {
  const { seasonTurn } = input.climate;
  return Math.max(0, seasonOf(seasonTurn, day) - seasonOf(seasonTurn, opensOn(input, span)));
}

/**
 * Whether a sowing leaves the winter after it to no bare ground: the gap ends before winter, or it is no warm cover, or that goes
 * in so early that one for winter can follow it.
 */
export function holdsWinter(
  input: PracticeInput,
  span: OpenSpan,
  parts: readonly CoverPart[],
  { sow, season }: Sowing,
): boolean {
  const opens = opensFor(input, span, sow);
  if (span.to !== undefined && span.to <= midwinterAfter(input.climate, opens)) return true;
  if (sow.half !== 'summer') return true;
  const last = lastWarmDay(input, parts, season);
  return last !== undefined && addDays(opens, WARM_SPAN_OPENS_DAYS) <= last;
}

function lastDay(
  input: PracticeInput,
  span: OpenSpan,
  parts: readonly CoverPart[],
  { sow, season }: Sowing,
): Day | undefined {
  const beforeNext = lastBefore(input, span, parts, sow);
  const warm = sow.half === 'summer' ? lastWarmDay(input, parts, season) : undefined;
  return soonest(beforeNext, warm !== undefined && warm >= sow.window.earliest ? warm : undefined);
}

/** The last day a warm cover is best sown, well before the freeze (buckwheat: 15 August at Geneva, cover:S4a). */
function lastWarmDay({ climate }: PracticeInput, parts: readonly CoverPart[], season: number): Day | undefined {
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  const days = Math.max(0, ...parts.map(({ cover }) => cover.warmDaysPreferred ?? 0));
  return freeze === undefined ? undefined : addDays(freeze, -days);
}

/** A stand that winter will not end before what comes next has to grow, be cut and settle first. */
function lastBefore(
  input: PracticeInput,
  span: OpenSpan,
  parts: readonly CoverPart[],
  { half, window }: SowWindow,
): Day | undefined {
  if (span.to === undefined) return undefined;
  const next = span.to;
  const ended =
    half === 'autumn' &&
    parts.every(({ cover }) => winterFate(cover, input) === 'dies' && killedOn(cover, window.latest, input) < next);
  const settle = span.nextCover === undefined ? settleDays(parts, span.next) : daysToNextCover(parts);
  return addDays(next, -(LEAST_STAND_DAYS + (ended ? 0 : settle)));
}
