/**
 * What a stand holds when it is cut, counted for the ground it really covers.
 */
import type { Span } from '../../handbook/shapes.ts';
import type { Day } from '../../measures/days.ts';
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

function holdsReason(input: PracticeInput, { parts, share = 1 }: StandInBed, sown: Day, cut: CutWindow): Reason[] {
  const bloom = bloomOdds(input, parts, sown, cut.window.latest);
  const holds = holdsAtEnd({ input, parts, sown, window: cut, bloom });
  if (holds === undefined) return [];
  const { dryKgPerM2: dry, availableGPerM2: available, origin } = holds;
  const counted = (span: Span, factor: number): [number, number] => [
    span.low * factor * share,
    span.high * factor * share,
  ];
  const [dryLow, dryHigh] = counted(dry, 1000).map((grams) => 10 * Math.round(grams / 10));
  const [low, high] = counted(available, 1).map((grams) => Math.round(grams * 10) / 10);
  if (dryLow === undefined || dryHigh === undefined || low === undefined || high === undefined) return [];
  return [
    {
      rule: 'cover-cut.holds',
      saw: { day: cut.window.preferred, dryLow, dryHigh, low, high, known: origin.provenance },
      source: sourceOf(origin),
    },
  ];
}
