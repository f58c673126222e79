/**
 * Bare ground where a stand was meant to be and is not sown.
 */
import { type Day, latestOf } from '../../measures/days.ts';
import type { Gap } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskKey } from '../draft.ts';
import { clearKey } from '../keys.ts';
import type { Uncovered } from '../practice.ts';
import { gapReasons } from './bed-gap.ts';
import type { StandInBed } from './stand.ts';

/** A bed left bare from a day on, because a stand is not sown. */
export function inItsPlace(bedId: string, gap: Gap | undefined, day: Day, why: Reason): Uncovered {
  return {
    bedId,
    from: gap?.from === undefined ? day : latestOf(day, gap.from),
    ...(gap?.to === undefined ? {} : { to: gap.to }),
    why: [why, ...gapReasons(gap)],
    onResidue: false,
    after: waitsForClearing(gap),
  };
}

/** The same for a stand the gardener planned and no rule lets in, so that the gardener is told. */
export function refusedStand({ stand }: StandInBed, gap: Gap | undefined, why: Reason): Uncovered {
  const inPlaceOf = { standId: stand.id, cover: coverName(stand.coverId) };
  return { ...inItsPlace(stand.bedId, gap, stand.sow.day, why), inPlaceOf };
}

/** Why a stand the gardener skipped is not sown. */
export function whySkipped({ stand }: StandInBed): Reason {
  return { rule: 'cover-none.skipped', saw: { cover: coverName(stand.coverId) }, source: "the garden's own plan" };
}

/** The clearing of the crop before a gap. */
export function waitsForClearing(gap: Gap | undefined): TaskKey[] {
  return gap?.before ? [clearKey(gap.before.planting.id)] : [];
}
