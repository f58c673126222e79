/**
 * Which cover to suggest for a span that nobody planned for: the best of all that could be sown there, where one serves
 * better than a mulch.
 */
import { dayOfIndex, seasonOf } from '../../climate/season.ts';
import type { Bed, Stand } from '../../garden/garden.ts';
import { type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { coverName } from '../covers.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { soilAwake } from '../seasons.ts';
import { type BestCover, bestCover } from './fit/gap-fits.ts';
import { gapStandId } from './fit/stand-id.ts';
import type { OpenSpan } from './open-spans.ts';
import type { SowingHalf, SowWindow } from './sow-window.ts';
import { type StandInBed, standInBed } from './stand.ts';

/** Season indices that stand for the sowing times of a season: spring, early summer, late summer. */
const SOWING_INDICES: Readonly<Record<SowingHalf, number>> = { spring: 100, summer: 170, autumn: 227 };

/** Days from the waking of the soil for which the residue of a cover keeps the ground well enough. House default. */
const RESIDUE_HOLDS_DAYS = 70;

/** A suggested stand with its window and the reasons for the kind. */
export interface Suggestion {
  at: StandInBed;
  sow: SowWindow;
  why: readonly Reason[];
}

/** The cover to sow in a span while its time is open on a day. */
export function suggestedStand(input: PracticeInput, bed: Bed, span: OpenSpan, from: Day): Suggestion | undefined {
  if (residueHolds(input, span)) return undefined;
  const standOf = (coverId: string, sow: SowWindow) => suggestedStandOf(input, bed, span, coverId, sow);
  const made = new Set(input.garden.stands.map(({ id }) => id));
  const best = bestCover(input, bed, span, { from, isTaken: (coverId, sow) => made.has(standOf(coverId, sow).id) });
  if (best === undefined) return undefined;
  return { at: standInBed(standOf(best.coverId, best.sow), bed), sow: best.sow, why: whySuggested(span, best) };
}

/** Whether what a cover left lying keeps the ground until the next crop goes in through it. */
function residueHolds({ climate }: PracticeInput, { onResidue, from, to }: OpenSpan): boolean {
  if (onResidue !== true || from === undefined || to === undefined) return false;
  const wakes = soilAwake(climate, seasonOf(climate.seasonTurn, to)) ?? from;
  return daysBetween(latestOf(from, wakes), to) <= RESIDUE_HOLDS_DAYS;
}

/** That it is the best, and what speaks for it and against it. */
function whySuggested({ next, nextCover, to }: OpenSpan, { coverId, fit: { pros, cons } }: BestCover): Reason[] {
  const following = next?.crop.name.toLowerCase() ?? (nextCover && coverName(nextCover));
  const saw = { cover: coverName(coverId), ...(following && to ? { next: following, to } : {}) };
  return [{ rule: 'cover-sow.suggested', saw, source: 'house default' }, ...pros, ...cons];
}

/** The stand a suggestion would make. Its id hangs on the gap and the sowing time, so that it cannot be made twice. */
function suggestedStandOf(
  { climate: { seasonTurn } }: PracticeInput,
  bed: Bed,
  span: OpenSpan,
  coverId: string,
  { half, window }: SowWindow,
): Stand {
  const season = seasonOf(seasonTurn, window.preferred);
  const day = dayOfIndex(seasonTurn, season, SOWING_INDICES[half]);
  const id = gapStandId(span, { season, half, coverId });
  return { id, bedId: bed.id, coverId, sow: { day, happened: false }, regrowthCheckedOn: [] };
}
