/**
 * When a stand the gardener planned is sown: the planned day, held inside what the bed and the season allow.
 */
import { seasonOf } from '../../climate/season.ts';
import { addDays, clampDay, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { type Gap, soonest } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer } from '../seasons.ts';
import { freeOfCovers } from './bed-gap.ts';
import { LEAST_GROWTH_DAYS } from './cut-window.ts';
import { nextStand } from './followers.ts';
import { daysToNextCover, settleDays } from './settle.ts';
import { freezesKnown, heldBetween, isFrostSeeded, type SowWindow, sowingHalves, sowWindow } from './sow-window.ts';
import type { StandInBed } from './stand.ts';
import { standsAt } from './winter.ts';

/** Days by which a planned sowing is moved to reach its window; from farther off it is refused. House default. */
const MOVE_DAYS = 45;
/** Days a planned sowing stays open where no freeze date is known and only the gardener's own day counts. House default. */
const OWN_DAY_OPEN_DAYS = 7;

/** A planned sowing: its window with the gap it lies in, or why there is none. */
type PlannedSowing = { sow: SowWindow; gap: Gap | undefined } | { refused: Reason; gap: Gap | undefined };

/** Finds the window of a planned stand. Its preferred day is the planned one where that lies inside. */
export function plannedSowing(input: PracticeInput, at: StandInBed, gaps: readonly Gap[]): PlannedSowing {
  const wanted = at.stand.sow.day;
  const gap = gaps.find(({ to }) => to === undefined || to > wanted);
  const rule = ruledWindow(input, at);
  if (rule === undefined) return { gap, refused: refusal(at, 'cover-sow.not-then') };
  const last = lastDay(input, at, gap, rule);
  const covers = isFrostSeeded(at.parts, rule) ? undefined : freeOfCovers(input, at.bed.id);
  const held = heldBetween(rule, latestGiven(gap?.from, covers?.day), last);
  if (held === undefined) {
    const taken = covers !== undefined && heldBetween(rule, gap?.from, last) !== undefined;
    return { gap, refused: taken ? covers.reason : refusal(at, 'cover-sow.no-window') };
  }
  if (held.window.latest < input.garden.startedOn) return { gap, refused: refusal(at, 'cover-sow.closed', held) };
  const { earliest, latest } = held.window;
  const window = { earliest, preferred: clampDay(wanted, earliest, latest), latest };
  const after = covers !== undefined && covers.day === earliest && wanted <= earliest ? [covers.reason] : [];
  return { gap, sow: { ...held, reasons: [...held.reasons, ...after], window } };
}

function latestGiven(a: Day | undefined, b: Day | undefined): Day | undefined {
  return a === undefined || b === undefined ? (a ?? b) : latestOf(a, b);
}

/**
 * The window a planned day means: the one it lies in, else the nearest within reach. Where no freeze date is known
 * nothing can be said against the gardener's own day.
 */
function ruledWindow(input: PracticeInput, { stand, parts }: StandInBed): SowWindow | undefined {
  const wanted = stand.sow.day;
  const { climate } = input;
  const season = seasonOf(climate.seasonTurn, wanted);
  if (!freezesKnown(climate, season)) return ownDay(input, wanted);
  const windows = [season, season + 1].flatMap((year) =>
    sowingHalves(parts).flatMap((half) => sowWindow(parts, half, year, input) ?? []),
  );
  const near = windows.filter(({ window }) => daysOff(wanted, window) <= MOVE_DAYS);
  return near.sort((a, b) => daysOff(wanted, a.window) - daysOff(wanted, b.window))[0];
}

function daysOff(day: Day, { earliest, latest }: SowWindow['window']): number {
  return Math.max(0, daysBetween(day, earliest), daysBetween(latest, day));
}

function ownDay(input: PracticeInput, wanted: Day): SowWindow {
  return {
    half: isAfterMidsummer(input.climate, wanted) ? 'autumn' : 'spring',
    window: { earliest: wanted, preferred: wanted, latest: addDays(wanted, OWN_DAY_OPEN_DAYS) },
    reasons: [{ rule: 'cover-sow.no-dates', saw: { wanted }, source: "the garden's climate" }],
  };
}

/** The last day that leaves time for what follows: a crop must have it, a cover planned next only where it can be had. */
function lastDay(input: PracticeInput, at: StandInBed, gap: Gap | undefined, { window }: SowWindow): Day | undefined {
  const { stand, parts } = at;
  const living = (day: Day): boolean => parts.some(({ cover }) => standsAt(cover, window.latest, day, input));
  const next = gap?.to;
  const beforeCrop = next && addDays(next, living(next) ? -(LEAST_GROWTH_DAYS + settleDays(parts, gap?.next)) : -1);
  const cover = nextStand(input, stand.bedId, stand.sow.day);
  if (cover === undefined || !living(cover.sow.day)) return beforeCrop;
  const beforeCover = addDays(cover.sow.day, -(LEAST_GROWTH_DAYS + daysToNextCover(parts)));
  return soonest(beforeCrop, latestOf(beforeCover, stand.sow.day));
}

function refusal({ stand }: StandInBed, rule: string, sow?: SowWindow): Reason {
  return {
    rule,
    saw: { cover: coverName(stand.coverId), wanted: stand.sow.day, ...(sow ? { closed: sow.window.latest } : {}) },
    source: 'house default',
  };
}
