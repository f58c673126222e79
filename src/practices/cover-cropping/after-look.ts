/**
 * What follows when a young stand was looked at: nothing, a sowing of its thin places, a mulch on them, or a bed that
 * counts as bare.
 */
import type { StandLook } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import type { Gap } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import type { PracticeInput, ThinStand } from '../practice.ts';
import { COVERED_SHARE, growingParts, grownSince, lastLook, standName, THIN_BELOW } from '../stand-cover.ts';
import { type SowAgain, sowAgain } from './fit/sow-again.ts';
import { lookReason } from './look-reason.ts';
import { sowAgainDraft, sowAgainKey } from './sow-again-draft.ts';
import { checkDraft } from './sow-drafts.ts';
import type { StandInBed } from './stand.ts';

/** A stand as it is after a look, with what the look asks for. */
export interface AfterLook {
  /** The stand with what will grow in it. */
  at: StandInBed;
  /** The day its growth counts from. */
  sown: Day;
  drafts: readonly TaskDraft[];
  /** The bare ground left in it, but for the work that comes before its mulch. */
  thin?: Omit<ThinStand, 'after'>;
  /** The day from which the bed counts as bare, where next to nothing came up and nothing is sown again. */
  failed?: { on: Day; why: Reason };
}

/**
 * What the latest look at a stand leads to; where nobody looked since it was sown, the look itself.
 *
 * @param within the gap it grows in, and the last day to cut it as it is, where it has to be cut
 */
export function afterLook(
  input: PracticeInput,
  at: StandInBed,
  within: { gap: Gap | undefined; cutBy: Day | undefined },
): AfterLook {
  const { stand } = at;
  const { gap, cutBy } = within;
  const sown = grownSince(stand);
  const look = lastLook(stand);
  if (look === undefined) {
    const on = stand.resown?.at(-1)?.on ?? sown;
    return { at, sown, drafts: [checkDraft(input, at, { earliest: on, preferred: on, latest: on })] };
  }
  const share = COVERED_SHARE[look.covered];
  if (share >= THIN_BELOW || gap === undefined) return { at, sown, drafts: [] };
  const thinStand = { stand, bed: at.bed, gap, anew: look.covered === 'hardly-any' };
  const again = sowAgain(input, cutBy === undefined ? thinStand : { ...thinStand, cutBy }, look.on);
  const draft = again && sowAgainDraft(input, at, look, again);
  const left = draft === undefined ? look.on : leftOn(input, draft);
  if (again !== undefined && draft !== undefined && left === undefined) return sownAgain(input, at, look, again, draft);
  const drafts = draft === undefined ? [] : [draft];
  const from = left ?? look.on;
  if (look.covered === 'hardly-any') return { at, sown, drafts, failed: { on: from, why: failedReason(at, look) } };
  const thin = { bedId: at.bed.id, standId: stand.id, cover: at.name, bareShare: 1 - share, from };
  return {
    at,
    sown,
    drafts,
    thin: {
      ...thin,
      ...(gap.to === undefined ? {} : { to: gap.to }),
      why: [lookReason(look), noSowing(again)],
    },
  };
}

/** The day on which a sowing was given up or its time was over; nothing while it can be done. */
function leftOn({ garden, today }: PracticeInput, { key, window }: TaskDraft): Day | undefined {
  const skipped = garden.skipped[key];
  if (skipped !== undefined) return skipped;
  const last = latestOf(window.latest, garden.pins[key] ?? window.latest);
  return today > last ? addDays(last, 1) : undefined;
}

/** A stand whose thin places are to be sown: reckoned with as sown, and looked at again. */
function sownAgain(
  input: PracticeInput,
  at: StandInBed,
  look: StandLook,
  { coverId, sow }: SowAgain,
  draft: TaskDraft,
): AfterLook {
  const on = input.garden.pins[draft.key] ?? sow.window.preferred;
  const meant = { ...at.stand, resown: [...(at.stand.resown ?? []), { on: latestOf(on, look.on), coverId }] };
  const { share: _asSeen, ...rest } = at;
  const whole = { ...rest, parts: growingParts(meant), name: standName(meant) };
  const check = checkDraft(input, whole, sow.window, sowAgainKey(at));
  return { at: whole, sown: grownSince(meant), drafts: [draft, check] };
}

function failedReason({ stand }: StandInBed, { on }: StandLook): Reason {
  return { rule: 'cover-none.failed', saw: { cover: coverName(stand.coverId), on }, source: "the garden's own plan" };
}

function noSowing(again: SowAgain | undefined): Reason {
  return again === undefined
    ? { rule: 'cover-thin.too-late', saw: {}, source: 'house default' }
    : {
        rule: 'cover-thin.not-sown',
        saw: { cover: coverName(again.coverId) },
        limit: again.sow.window.latest,
        source: "the garden's own plan",
      };
}
