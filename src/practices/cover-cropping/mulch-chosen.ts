/**
 * A span the gardener mulches in place of a cover.
 */

import type { Garden, MulchPlan } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { latestOf } from '../../measures/days.ts';
import type { Uncovered } from '../practice.ts';
import { gapReasons } from './bed-gap.ts';
import { waitsForClearing } from './in-its-place.ts';
import type { OpenSpan } from './open-spans.ts';

/** The mulch chosen for days of a span, the earliest where there are several. */
export function mulchChosen({ mulches }: Garden, { bedId, from, to }: OpenSpan): MulchPlan | undefined {
  return inBed(mulches, bedId)
    .filter((mulch) => (to === undefined || mulch.from < to) && endsAfter(mulch, from))
    .sort((a, b) => (a.from < b.from ? -1 : 1))[0];
}

function endsAfter(mulch: MulchPlan, day: string | undefined): boolean {
  return day === undefined || mulch.to === undefined || mulch.to > day;
}

/** The span as bare ground that the mulch answers. */
export function underMulch(span: OpenSpan, { from, mulch }: MulchPlan): Uncovered {
  return {
    bedId: span.bedId,
    from: span.from === undefined ? from : latestOf(from, span.from),
    ...(span.to === undefined ? {} : { to: span.to }),
    why: [{ rule: 'cover-none.mulch-chosen', saw: { mulch }, source: "the garden's own plan" }, ...gapReasons(span)],
    mulch,
    onResidue: span.onResidue === true,
    after: waitsForClearing(span),
  };
}
