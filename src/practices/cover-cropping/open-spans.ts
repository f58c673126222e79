/**
 * The parts of a gap that no cover holds or is planned to hold.
 */
import { addDays, type Day } from '../../measures/days.ts';
import type { Gap } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import { daysToNextCover } from './settle.ts';
import type { StandPlan } from './stand-life.ts';

/** A span of a gap with nothing in it. */
export interface OpenSpan extends Gap {
  /** The cover that is planned next, where one comes before the next crop. */
  nextCover?: string;
  /** Whether a cover came before it in the same gap, so that its residue lies there. */
  onResidue?: boolean;
  /** Why the cover that was sown there before it left the ground bare, where it did. */
  failed?: Reason;
}

/** The open spans of a gap, in order. Stands sown before the gap's crop went in belong to an earlier one. */
export function openSpans(gap: Gap, plans: readonly StandPlan[]): OpenSpan[] {
  const inGap = plans
    .filter((plan) => holdsPartOf(gap, plan))
    .sort((a, b) =>
      fromOf(a) === fromOf(b) ? (a.at.stand.id < b.at.stand.id ? -1 : 1) : fromOf(a) < fromOf(b) ? -1 : 1,
    );
  const spans: OpenSpan[] = [];
  let open: OpenSpan = gap;
  for (const plan of inGap) {
    if (open.from === undefined || open.from < fromOf(plan)) spans.push(endingAt(open, plan));
    const free = freeFrom(plan);
    if (free === undefined) return spans;
    if (open.from === undefined || free > open.from) open = openAgain(open, plan, free);
  }
  return [...spans, open];
}

function openAgain({ onResidue: _residue, failed: _failed, ...open }: OpenSpan, plan: StandPlan, from: Day): OpenSpan {
  return { ...open, from, ...(plan.failed === undefined ? { onResidue: true } : { failed: plan.failed }) };
}

function holdsPartOf({ before, to }: Gap, { from }: StandPlan): boolean {
  return from !== undefined && (to === undefined || from < to) && (before === undefined || from > before.from);
}

function fromOf({ from }: StandPlan): Day {
  return from ?? '';
}

function endingAt({ next: _next, ...open }: OpenSpan, plan: StandPlan): OpenSpan {
  return { ...open, to: fromOf(plan), nextCover: plan.at.stand.coverId };
}

/** The first day something else may be sown after a stand; nothing while it has no end. */
function freeFrom({ ends, cut, free, at }: StandPlan): Day | undefined {
  if (free !== undefined) return free;
  if (ends === undefined) return undefined;
  return addDays(ends, cut ? daysToNextCover(at.parts) : 1);
}
