/**
 * Which cover to suggest for a span that nobody planned for.
 *
 * The choice follows published uses (Cornell's guide for New York growers, cover:S4a–m): a bed wanted early gets a
 * cover that winter kills; one wanted from late spring on may carry rye or rye with vetch through winter; a warm gap
 * of five to eight weeks gets buckwheat. Where beds are not dug, a living cover takes a month to finish, so it is
 * suggested only where it has grown before that.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { dayOfIndex, seasonOf } from '../../climate/season.ts';
import type { Bed, Stand } from '../../garden/garden.ts';
import type { SourceId } from '../../handbook/shapes.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { soonest } from '../bed-timeline.ts';
import { type CoverPart, coverName, coverParts } from '../covers.ts';
import type { Reason } from '../draft.ts';
import { coverLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { springGrowthFrom } from './cut-window.ts';
import { gapStandId } from './fit/stand-id.ts';
import type { OpenSpan } from './open-spans.ts';
import { daysToNextCover, settleDays } from './settle.ts';
import { heldBetween, type SowingHalf, type SowWindow, sowWindow } from './sow-window.ts';
import { type StandInBed, standInBed } from './stand.ts';
import { killedOn, winterFate } from './winter.ts';

/** Days after the median last freeze from which vetch earns its place: 10 June at Geneva, New York (cover:S5). */
const VETCH_DAYS = 43;
/** Days a stand must grow to have been worth the seed. House default: buckwheat's 40 warm days (cover:S4a). */
export const LEAST_STAND_DAYS = 40;
/** Days before a warm cover's last suggested day that its span must open: in a later one a cover for winter serves. House default. */
const WARM_SPAN_OPENS_DAYS = 28;

/** Season indices that stand for the sowing times of a season: spring, early summer, late summer. */
const SOWING_INDICES: Readonly<Record<SowingHalf, number>> = { spring: 100, summer: 170, autumn: 227 };

/** A suggested stand with its window and the reason for the kind. */
export interface Suggestion {
  at: StandInBed;
  sow: SowWindow;
  why: Reason;
}

interface Candidate {
  coverId: string;
  why: 'warm gap' | 'wanted early' | 'wanted late' | 'hungry crop next' | 'spring gap';
  source: SourceId;
}

/** The first cover of the table that the span and the season let in, from a day on. */
export function suggestedStand(input: PracticeInput, bed: Bed, span: OpenSpan, from: Day): Suggestion | undefined {
  const season = seasonOf(input.climate.seasonTurn, from);
  for (const year of [season, season + 1]) {
    for (const half of ['spring', 'summer', 'autumn'] as const) {
      for (const candidate of candidates(input, span, half, year)) {
        const found = tryCover(input, bed, span, { half, season: year, candidate });
        if (found !== undefined && found.sow.window.latest >= from) return found;
      }
    }
  }
  return undefined;
}

function candidates(input: PracticeInput, span: OpenSpan, half: SowingHalf, season: number): Candidate[] {
  const legumeNear = [span.before, span.next].some((crop) => crop?.crop.rotationGroup === 'legume');
  if (half === 'spring') {
    const day = dayOfIndex(input.climate.seasonTurn, season, SOWING_INDICES.spring);
    const plain = legumeNear || coverLockOut(input.garden, span.bedId, 'oats-field-pea', day) !== undefined;
    return [{ coverId: plain ? 'oats' : 'oats-field-pea', why: 'spring gap', source: 'cover:S4c' }];
  }
  if (half === 'summer') return [{ coverId: 'buckwheat', why: 'warm gap', source: 'cover:S4a' }];
  const killed = (legumeNear ? ['oats'] : ['oats-field-pea', 'oats']).map(
    (coverId): Candidate => ({ coverId, why: 'wanted early', source: 'cover:S2a' }),
  );
  const rye: Candidate = { coverId: 'cereal_rye', why: 'wanted late', source: 'cover:S4i' };
  const vetch: Candidate = { coverId: 'rye-vetch', why: 'hungry crop next', source: 'cover:S5' };
  const hungry = span.next?.crop.nitrogen === 'high' && !legumeNear && leavesVetchItsMay(input, span, season);
  return [
    ...(hungry ? [vetch] : []),
    ...killed,
    ...(leavesSpringGrowth(input, span, season, coverParts(rye.coverId)) ? [rye] : []),
  ];
}

/** Whether a living cover would have grown by the day it has to be cut for what follows. */
function leavesSpringGrowth(
  { climate }: PracticeInput,
  span: OpenSpan,
  season: number,
  parts: readonly CoverPart[],
): boolean {
  if (span.to === undefined) return true;
  const grown = springGrowthFrom(climate, season + 1);
  return grown !== undefined && addDays(span.to, -settleDays(parts, span.next)) > grown;
}

/** Whether the next crop goes in so late that vetch, which gathers most in May, is worth its seed. */
function leavesVetchItsMay({ climate }: PracticeInput, span: OpenSpan, season: number): boolean {
  const ask = { event: 'last-spring', limitF: 32, season: season + 1, chancePercent: 50 } as const;
  const freeze = freezeDay(climate, ask);
  return span.to !== undefined && freeze !== undefined && span.to >= addDays(freeze, VETCH_DAYS);
}

interface Trial {
  half: SowingHalf;
  season: number;
  candidate: Candidate;
}

function tryCover(input: PracticeInput, bed: Bed, span: OpenSpan, trial: Trial): Suggestion | undefined {
  const { half, season, candidate } = trial;
  const at = standInBed(suggestedStandOf(input, bed, span, trial), bed);
  if (input.garden.stands.some(({ id }) => id === at.stand.id)) return undefined;
  const rule = sowWindow(at.parts, half, season, input);
  const warmLast = half === 'summer' ? lastWarmDay(input, at, season) : undefined;
  if (warmLast !== undefined && span.from !== undefined && daysBetween(span.from, warmLast) < WARM_SPAN_OPENS_DAYS)
    return undefined;
  const last = soonest(warmLast, rule && lastBefore(input, span, at, rule));
  const sow = rule && heldBetween(rule, span.from, last);
  if (sow === undefined) return undefined;
  if (coverLockOut(input.garden, bed.id, candidate.coverId, sow.window.latest) !== undefined) return undefined;
  return { at, sow, why: whySuggested(span, candidate) };
}

function whySuggested({ next, nextCover, to }: OpenSpan, { coverId, why, source }: Candidate): Reason {
  const following = next?.crop.name.toLowerCase() ?? (nextCover && coverName(nextCover));
  return {
    rule: 'cover-sow.suggested',
    saw: { cover: coverName(coverId), why, ...(following && to ? { next: following, to } : {}) },
    source,
  };
}

/** The last day a warm cover is suggested, well before the freeze (buckwheat: 15 August at Geneva, cover:S4a). */
function lastWarmDay({ climate }: PracticeInput, { parts }: StandInBed, season: number): Day | undefined {
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  const days = Math.max(0, ...parts.map(({ cover }) => cover.warmDaysPreferred ?? 0));
  return freeze === undefined ? undefined : addDays(freeze, -days);
}

/** A stand that winter will not end before what comes next has to grow, be cut and settle first. */
function lastBefore(input: PracticeInput, span: OpenSpan, { parts }: StandInBed, sow: SowWindow): Day | undefined {
  if (span.to === undefined) return undefined;
  const next = span.to;
  const ended =
    sow.half === 'autumn' &&
    parts.every(({ cover }) => winterFate(cover, input) === 'dies' && killedOn(cover, sow.window.latest, input) < next);
  const settle = span.nextCover === undefined ? settleDays(parts, span.next) : daysToNextCover(parts);
  return addDays(next, -(LEAST_STAND_DAYS + (ended ? 0 : settle)));
}

/** The stand a suggestion would make. Its id hangs on the gap and the sowing time, so that it cannot be made twice. */
function suggestedStandOf(input: PracticeInput, bed: Bed, span: OpenSpan, { half, season, candidate }: Trial): Stand {
  const id = gapStandId(span, { season, half, coverId: candidate.coverId });
  const day = dayOfIndex(input.climate.seasonTurn, season, SOWING_INDICES[half]);
  return { id, bedId: bed.id, coverId: candidate.coverId, sow: { day, happened: false }, regrowthCheckedOn: [] };
}
