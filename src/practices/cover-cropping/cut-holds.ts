/**
 * What a stand holds when it is cut, counted for the ground it really covers.
 */
import type { Day } from '../../measures/days.ts';
import { areaOf } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { lastLook } from '../stand-cover.ts';
import type { CutWindow } from './cut-window.ts';
import { bloomOdds } from './fit/bloom-odds.ts';
import { sourceOf } from './fit/fit-reasons.ts';
import { holdsAtEnd } from './fit/holding.ts';
import { lookReason } from './look-reason.ts';
import type { StandInBed } from './stand.ts';

/** A cut with what was seen of its stand and what it holds among its reasons. */
export function withHoldings(
  input: PracticeInput,
  at: StandInBed,
  sown: Day,
  cut: CutWindow | undefined,
): CutWindow | undefined {
  if (cut === undefined) return undefined;
  const look = at.share === undefined ? undefined : lastLook(at.stand);
  return {
    ...cut,
    reasons: [...cut.reasons, ...(look ? [lookReason(look)] : []), ...holdsReason(input, at, sown, cut)],
  };
}

/** The dry matter of the whole bed and the nitrogen the next crop finds of it, for the ground that is covered. */
function holdsReason(input: PracticeInput, at: StandInBed, sown: Day, cut: CutWindow): Reason[] {
  const { parts, bed, share = 1 } = at;
  const bloom = bloomOdds(input, parts, sown, cut.window.latest);
  const holds = holdsAtEnd({ input, parts, sown, window: cut, bloom });
  if (holds === undefined) return [];
  const { dryKgPerM2, availableGPerM2, origin } = holds;
  const inTenths = (figure: number): number => Math.round(figure * share * 10) / 10;
  const saw = {
    day: cut.window.preferred,
    dryLowKg: inTenths(dryKgPerM2.low * areaOf(bed)),
    dryHighKg: inTenths(dryKgPerM2.high * areaOf(bed)),
    lowGPerM2: inTenths(availableGPerM2.low),
    highGPerM2: inTenths(availableGPerM2.high),
    known: origin.provenance,
  };
  return [{ rule: 'cover-cut.holds', saw, source: sourceOf(origin) }];
}
