/**
 * A stand's whole life as far as it is known: when it goes in, when it is over, and what it asks for in between.
 */

import type { Planting, Stand } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { type AfterCut, afterCut, endingTask, SHEET_DAYS } from '../after-cut.ts';
import type { Gap } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { cutKey, sowKey } from '../keys.ts';
import { standLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter } from '../seasons.ts';
import { grownSince, lastLook } from '../stand-cover.ts';
import { afterLook } from './after-look.ts';
import { gapReasons, waitsFor } from './bed-gap.ts';
import { budLook } from './bud-looks.ts';
import { cutDrafts } from './cut-drafts.ts';
import { followsSowing, isBeforeWinter } from './cut-follows.ts';
import { withHoldings } from './cut-holds.ts';
import { type CutWindow, cutWindow, doubtsOf } from './cut-window.ts';
import { deadCheckDraft } from './dead-check.ts';
import { inItsPlace, refusedStand, whySkipped } from './in-its-place.ts';
import { plannedSowing } from './planned-sowing.ts';
import { ACT_DAYS, afterCutDrafts } from './regrowth-drafts.ts';
import { coverMayFollow } from './settle.ts';
import { checkDraft, lastOrderDay, orderDraft, sowDraft } from './sow-drafts.ts';
import type { SowWindow } from './sow-window.ts';
import type { StandInBed } from './stand.ts';
import type { StandPlan } from './stand-life.ts';
import { weedsAnswered } from './weeds.ts';
import { killedOn, situationOf } from './winter.ts';

/** Days a sowing nobody marked is still reckoned with after its window; then the stand was never sown. House default. */
const LOST_AFTER_DAYS = 14;
/** Days after midwinter by which a winter-killed stand lies flat and its bed counts as open again. House default. */
const FLAT_AFTER_MIDWINTER_DAYS = 90;

/** Works out one stand. A planned one that carries a disease found in its bed is not sown, and leaves its span open. */
export function planStand(input: PracticeInput, at: StandInBed, gaps: readonly Gap[]): StandPlan {
  const { stand } = at;
  if (standLockOut(input.garden, stand) !== undefined) return { at, cut: false, drafts: [] };
  if (!stand.sow.happened) return plannedStand(input, at, gaps);
  const from = stand.sow.day;
  if (stand.deadOn !== undefined) return { at, from, ends: stand.deadOn, cut: false, drafts: [] };
  const state = afterCut(input.garden, stand);
  if (state !== undefined) return cutStand(input, at, from, state);
  const replaced = cropAfter(input.garden.plantings, stand, from);
  if (replaced !== undefined) return { at, from, ends: replaced, cut: false, drafts: [] };
  return standing(input, at, gaps);
}

/** A stand that grows: what was seen of it while it was young decides what follows. */
function standing(input: PracticeInput, at: StandInBed, gaps: readonly Gap[]): StandPlan {
  const { stand, bed } = at;
  const from = stand.sow.day;
  const cutAs = ({ parts }: StandInBed, sown: Day) => cutWindow(input, bed.id, parts, sown, stand.seen?.at(-1));
  const asItIs = cutAs(at, grownSince(stand));
  const gap = gaps.find((each) => isIn(each, from));
  const after = afterLook(input, at, { gap, cutBy: asItIs?.window.latest });
  const { sown, failed, thin } = after;
  if (failed !== undefined) {
    const { drafts } = weedsAnswered(input, at, lastLook(stand), undefined);
    return { at, from, ends: failed.on, cut: false, failed: failed.why, drafts: [...after.drafts, ...drafts] };
  }
  const own = after.at === at ? asItIs : cutAs(after.at, sown);
  const weeds = weedsAnswered(input, at, lastLook(stand), own);
  const cut = withHoldings(input, after.at, sown, weeds.cut);
  const drafts = [...after.drafts, ...weeds.drafts, ...later(input, after.at, sown, cut)];
  const plan = { at, from, cut: cut !== undefined, drafts, ...endOf(input, after.at, sown, cut) };
  return thin === undefined ? plan : { ...plan, thin: { ...thin, after: weeds.drafts.map(({ key }) => key) } };
}

function isIn({ from, to }: Gap, day: Day): boolean {
  return (from === undefined || from <= day) && (to === undefined || day < to);
}

/** The day a crop went into the bed after a day of a stand: by then it was gone, whatever was written down. */
function cropAfter(plantings: readonly Planting[], { bedId }: Stand, after: Day): Day | undefined {
  const days = inBed(plantings, bedId)
    .filter((planting) => planting.start.happened && planting.start.day > after)
    .map(({ start }) => start.day);
  return days.sort()[0];
}

/** A stand that was cut, until it is over or something else went in. */
function cutStand(input: PracticeInput, at: StandInBed, from: Day, state: AfterCut): StandPlan {
  const { plantings, stands } = input.garden;
  const { id, bedId } = at.stand;
  const cut = { at, from, cut: true, free: coverMayFollow(state) };
  const sown = inBed(stands, bedId).some(({ sow }) => sow.happened && sow.day > state.on);
  if (sown || cropAfter(plantings, at.stand, state.on) !== undefined)
    return { ...cut, ends: state.lastCut, drafts: [] };
  const endKey = endingTask(id, state);
  const drafts = afterCutDrafts(input, at, state);
  return { ...cut, ends: heldUntil(state), ...(endKey === undefined ? {} : { endKey }), drafts };
}

/** The last day a cut stand is expected to hold its bed. */
function heldUntil({ is, on, lastCut, letBe }: AfterCut): Day {
  if (letBe || is === 'watched' || is === 'over') return lastCut;
  if (is === 'sheeted') return on;
  return addDays(on, is === 'green' ? ACT_DAYS : SHEET_DAYS.low);
}

/** A suggested stand: what a planned one asks for, but for the look at the young plants. Nothing more where it was skipped. */
export function suggestedPlan(input: PracticeInput, at: StandInBed, sow: SowWindow, draft: TaskDraft): StandPlan {
  if (input.garden.skipped[draft.key] !== undefined) return { at, cut: false, drafts: [draft] };
  const sowOn = input.garden.pins[draft.key] ?? sow.window.preferred;
  const cut = cutWindow(input, at.bed.id, at.parts, sowOn);
  const order = orderDraft(input, at, sow, { sowOn, doubts: doubtsOf(cut) });
  const inTime = openSince(input, at, sowOn) <= lastOrderDay(sowOn);
  const drafts = [
    ...(inTime ? [{ ...order, ifMissed: 'drop' as const }] : []),
    draft,
    ...later(input, at, sowOn, cut, sow.window),
  ];
  return { at, from: sow.window.earliest, sow, cut: cut !== undefined, drafts, ...endOf(input, at, sowOn, cut) };
}

/** The day since which a bed is known to be open for a suggestion: an order that was due before that cannot be asked for. */
function openSince({ garden }: PracticeInput, { bed }: StandInBed, sowOn: Day): Day {
  const ended = inBed(garden.stands, bed.id)
    .flatMap(({ deadOn, cutOn }) => deadOn ?? cutOn ?? [])
    .filter((day) => day <= sowOn);
  return latestOf(garden.startedOn, ...ended);
}

/**
 * What a stand asks for once it is up: the cut with its regrowth check, the looks for buds and after winter.
 *
 * @param sowing the days it may be sown on, where that is still to be done
 */
function later(
  input: PracticeInput,
  at: StandInBed,
  sown: Day,
  cut: CutWindow | undefined,
  sowing?: Window,
): TaskDraft[] {
  const follows = cut && sowing && followsSowing(withoutStand(input, at.stand.id), at, { window: sowing, sown }, cut);
  const dead = cut && isBeforeWinter(input, sown, cut) ? undefined : deadCheckDraft(input, at, sown);
  const buds = budLook(input, at, sown, cut);
  return [...(cut ? cutDrafts(input, at, cut, follows) : []), ...(buds ? [buds] : []), ...(dead ? [dead] : [])];
}

function endOf(
  input: PracticeInput,
  at: StandInBed,
  sown: Day,
  cut: CutWindow | undefined,
): Pick<StandPlan, 'ends' | 'endKey'> {
  if (cut !== undefined) return { ends: cut.window.latest, endKey: cutKey(at.stand.id) };
  if (at.parts.some(({ cover }) => situationOf(cover, sown, input) !== 'summer-sown')) return {};
  const [first = sown, ...others] = at.parts.map(({ cover }) =>
    cover.frostTender
      ? killedOn(cover, sown, input)
      : addDays(midwinterAfter(input.climate, sown), FLAT_AFTER_MIDWINTER_DAYS),
  );
  return { ends: latestOf(first, ...others) };
}

function plannedStand(input: PracticeInput, at: StandInBed, gaps: readonly Gap[]): StandPlan {
  const planned = plannedSowing(input, at, gaps);
  if ('refused' in planned) {
    const uncovered = refusedStand(at, planned.gap, planned.refused);
    return { at, from: at.stand.sow.day, cut: false, drafts: [], uncovered };
  }
  const { sow, gap } = planned;
  const key = sowKey(at.stand.id);
  const draft = sowDraft(input, at, sow, waitsFor(input, at, gap, sow), plannedReasons(at, sow, gap));
  const skipped = input.garden.skipped[key];
  if (skipped !== undefined) {
    const from = sow.window.earliest;
    const uncovered = inItsPlace(at.bed.id, gap, latestOf(from, skipped), whySkipped(at));
    return { at, from, cut: false, drafts: [draft], uncovered };
  }
  const pinned = input.garden.pins[key];
  if (pinned === undefined && sow.window.latest < addDays(input.today, -LOST_AFTER_DAYS))
    return { at, cut: false, drafts: [] };
  const sown = pinned ?? sow.window.preferred;
  const cut = cutWindow(withoutStand(input, at.stand.id), at.bed.id, at.parts, sown);
  const sowing = pinned === undefined ? sow.window : { earliest: pinned, preferred: pinned, latest: pinned };
  const isOver = sow.window.latest < input.today && (pinned === undefined || pinned < input.today);
  const drafts = [
    ...(isOver ? [] : [orderDraft(input, at, sow, { sowOn: sown, doubts: doubtsOf(cut) })]),
    draft,
    ...(isOver ? [] : [checkDraft(input, at, sowing)]),
    ...later(input, at, sown, cut, sowing),
  ];
  const from = earliestOf(sow.window.earliest, sown);
  return { at, from, sow, sowOn: sown, cut: cut !== undefined, drafts, ...endOf(input, at, sown, cut) };
}

/** A stand held to a day before its planned one is not what comes after itself. */
function withoutStand({ garden, ...input }: PracticeInput, standId: string): PracticeInput {
  return { ...input, garden: { ...garden, stands: garden.stands.filter(({ id }) => id !== standId) } };
}

function plannedReasons(at: StandInBed, { window }: SowWindow, gap: Gap | undefined): Reason[] {
  const saw = { cover: coverName(at.stand.coverId), wanted: at.stand.sow.day, held: window.preferred };
  return [{ rule: 'cover-sow.planned', saw, source: "the garden's own plan" }, ...gapReasons(gap)];
}
