/**
 * Warnings about raw manure on the tasks where something can still be done: spreading it, and putting in or lifting a crop
 * that would be harvested too soon after it. They hang on the whole pass: a crop's practice comes before the compost's.
 */
import { type CropSpan, cropSpans } from './bed-timeline.ts';
import type { BedDemand } from './compost-balance.ts';
import { HOT_RECORD } from './composting/hot-record.ts';
import type { Reason, TaskDraft } from './draft.ts';
import { type HeldSpread, heldInTime, type ManureClash, type ManureSpread, manureOnBeds } from './manure-spreads.ts';
import {
  clashWords,
  closedWords,
  keptWords,
  LOCAL_RULES,
  NOT_LATE,
  permittedWords,
  SPREADING_CAUTIONS,
  spreadWords,
  waysOutOfCrop,
  waysOutOfLayer,
} from './manure-words.ts';
import type { PracticeInput } from './practice.ts';

/** Other beds named at most where a layer had better go. House default. */
const BEDS_NAMED = 3;

/** The drafts, with those warned of that spread raw manure or lead to a harvest too soon after it. */
export function warnedOfManure(
  input: PracticeInput,
  beds: readonly BedDemand[],
  drafts: readonly TaskDraft[],
): TaskDraft[] {
  const held = manureOnBeds(input, beds);
  if (held.length === 0) return [...drafts];
  const clashes = held.flatMap((each) => each.clashes);
  return drafts.map((draft) => {
    const demand = beds.find(({ key }) => key === draft.key);
    if (demand === undefined) return cropWarned(input, draft, clashes);
    const named = withPiles(input, draft, demand);
    const spreading = held.find(({ spread }) => spread.planned?.key === draft.key);
    return spreading === undefined ? named : spreadWarned(input, named, spreading, { demand, beds });
  });
}

/** Where one pile counts as raw and another does not, every layer says which it is taken from. */
function withPiles({ garden }: PracticeInput, draft: TaskDraft, { drawn }: BedDemand): TaskDraft {
  const piles = drawn.flatMap(({ pileId }) => garden.piles.find(({ id }) => id === pileId) ?? []);
  const bins = [...new Set(piles.map(({ binId }) => garden.bins.find(({ id }) => id === binId)?.name ?? binId))];
  if (bins.length === 0) return draft;
  return { ...draft, steps: [`Take it from the pile in ${bins.join(' and ')}.`, ...draft.steps] };
}

function spreadWarned(
  input: PracticeInput,
  draft: TaskDraft,
  { spread, kept, clashes }: HeldSpread,
  { demand, beds }: { demand: BedDemand; beds: readonly BedDemand[] },
): TaskDraft {
  const others = bedsWithout(input, spread, demand, beds);
  const standing = standingOn(input, spread);
  const { bedName } = demand;
  return {
    ...draft,
    window: spread.planned?.window ?? draft.window,
    ifMissed: 'drop',
    missedNote: NOT_LATE,
    cautions: [
      ...SPREADING_CAUTIONS,
      closedWords(bedName, spread.on),
      ...kept.map((each) => `${bedName}: ${keptWords(each)}`),
      ...clashes.map((each) => `${bedName}: ${clashWords(each)} ${waysOutOfLayer(each, others)}`),
      ...standing.map(
        ({ crop }) => `${bedName}: ${crop.name.toLowerCase()} stands there. Raw manure goes on beds without a crop.`,
      ),
      ...draft.cautions,
    ],
    reasons: [
      ...draft.reasons,
      ...rawReason(spread),
      ...kept.map((each) => clashReason('manure-wait.by', each)),
      ...clashes.map((each) => clashReason('manure-wait.clash', each)),
      ...standing.map((span) => standingReason(spread, span)),
    ],
  };
}

/** Beds to be served in the same half of the year that such a layer would not harm. */
function bedsWithout(
  input: PracticeInput,
  { raw }: ManureSpread,
  demand: BedDemand,
  beds: readonly BedDemand[],
): string[] {
  return beds
    .filter(({ bedId, season, half, skipped }) => {
      return bedId !== demand.bedId && season === demand.season && half === demand.half && !skipped;
    })
    .filter(({ key, bedId, window }) => {
      const there = { bedId, raw, on: window.latest, planned: { key, window } };
      return heldInTime(input, there).clashes.length === 0 && standingOn(input, there).length === 0;
    })
    .map(({ bedName }) => bedName)
    .slice(0, BEDS_NAMED);
}

/** Crops that stand in a bed on the day of a spreading, in leaf for the kitchen or on the way there. */
function standingOn({ garden, climate }: PracticeInput, { bedId, on }: ManureSpread): CropSpan[] {
  return cropSpans(garden, bedId, climate).filter(
    ({ from, to, end }) => from < on && end !== 'happened' && (to === undefined || to > on),
  );
}

/** A task that puts a crop in, or lifts it, too soon before or after a spreading. */
function cropWarned({ garden }: PracticeInput, draft: TaskDraft, clashes: readonly ManureClash[]): TaskDraft {
  const starts = draft.makes.some(({ makes }) => makes === 'planting-started');
  const own = clashes.filter(({ span, permitted }) =>
    draft.makes.some(
      (effect) =>
        (effect.makes === 'planting-started' && effect.plantingId === span.planting.id) ||
        (effect.makes === 'bed-cleared' && effect.plantingId === span.planting.id && draft.window.earliest < permitted),
    ),
  );
  if (own.length === 0) return draft;
  const goesIn = starts ? draft.window : undefined;
  return {
    ...draft,
    cautions: [
      ...own.map((each) => {
        const words = [spreadWords(garden, each.spread), permittedWords(each), waysOutOfCrop(each, goesIn)];
        return [...words, LOCAL_RULES].join(' ');
      }),
      ...draft.cautions,
    ],
    reasons: [...draft.reasons, ...own.map((each) => clashReason('manure-wait.clash', each))],
  };
}

function rawReason({ raw: { manure, record } }: ManureSpread): Reason[] {
  if (record === undefined) return [];
  const { days, turns, unfit } = record;
  const fails = unfit === undefined ? {} : { unfit };
  const wanted = { daysWanted: HOT_RECORD.days, turnsWanted: HOT_RECORD.turns, tempC: HOT_RECORD.fromC };
  return [{ rule: 'manure-wait.as-raw', saw: { manure, days, turns, ...wanted, ...fails }, source: 'compost:S23' }];
}

function clashReason(rule: 'manure-wait.by' | 'manure-wait.clash', clash: ManureClash): Reason {
  const { span, spread, ripe, permitted, days, spreadBy } = clash;
  const saw = { crop: span.crop.name.toLowerCase(), ripe, days, spread: spread.on };
  return { rule, saw, limit: rule === 'manure-wait.by' ? spreadBy : permitted, source: 'compost:S23' };
}

function standingReason({ on }: ManureSpread, { crop }: CropSpan): Reason {
  const saw = { crop: crop.name.toLowerCase(), spread: on };
  return { rule: 'manure-wait.standing', saw, source: 'compost:CORNELL-GAP' };
}
