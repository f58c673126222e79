/**
 * Cover cropping: no bed bare. Stands the gardener planned get their dates; gaps nobody planned for get a suggestion.
 */
import type { Bed, Stand } from '../../garden/garden.ts';
import { originOf } from '../../handbook/shapes.ts';
import { addDays, clampDay, type Day, daysBetween, earliestOf } from '../../measures/days.ts';
import { areaOf, type Gap, gapsOf } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { effortOverArea } from '../effort.ts';
import { clearKey, topdressKey } from '../keys.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { situationOf } from './bloom.ts';
import { cutDrafts, deadCheckDraft, regrowthDraft } from './cut-drafts.ts';
import { growsAgain } from './cut-window.ts';
import { suggestedStand } from './gap-suggestion.ts';
import { coverSentences } from './sentences.ts';
import { checkDraft, orderDraft, sowDraft } from './sow-drafts.ts';
import { heldInGap, type SowWindow, sowWindow } from './sow-window.ts';
import { draftOfStand, type StandInBed, standInBed } from './stand.ts';

/** Minutes a square metre to lay leaves or straw. House default (1, from 0.5 to 2). */
const MULCH_MINUTES_PER_M2 = 1;
/** Days a gap must last for a cover to be worth sowing in it. House default: buckwheat's 40 days and a week to clear. */
const LEAST_GAP_DAYS = 47;

/** The cover-cropping practice. */
export const coverCropping: Practice = {
  name: 'cover-cropping',
  work(input) {
    const drafts = input.garden.beds.flatMap((bed) => bedDrafts(input, bed));
    const coverSowings = drafts.flatMap(({ key, kind, subject, window }) =>
      kind === 'sow-cover' && subject.type === 'stand'
        ? [{ bedId: subject.bedId, key, earliest: window.earliest, latest: window.latest }]
        : [],
    );
    return { drafts, found: { coverSowings } };
  },
  sentences: coverSentences,
};

function bedDrafts(input: PracticeInput, bed: Bed): TaskDraft[] {
  const stands = input.garden.stands.filter((stand) => stand.bedId === bed.id);
  const gaps = gapsOf(input.garden, bed.id, input.climate, input.garden.startedOn);
  return [
    ...stands.flatMap((stand) => standDrafts(input, standInBed(stand, bed), gaps)),
    ...gaps.flatMap((gap) => gapDrafts(input, bed, gap, stands)),
  ];
}

function standDrafts(input: PracticeInput, at: StandInBed, gaps: readonly Gap[]): TaskDraft[] {
  const { stand } = at;
  if (stand.deadOn !== undefined) return [];
  if (stand.cutOn !== undefined) {
    const wanted = growsAgain(at.parts) && stand.regrowthCheckedOn.length === 0;
    return wanted ? [regrowthDraft(at, stand.cutOn, stand.cutOn)] : [];
  }
  if (!stand.sow.happened) return plannedDrafts(input, at, gaps);
  return [checkDraft(at, stand.sow.day, true), ...laterDrafts(input, at, stand.sow.day)];
}

/** What a sown stand asks for once it is up: the cut with its regrowth check, the look after winter. */
function laterDrafts(input: PracticeInput, at: StandInBed, sown: Day): TaskDraft[] {
  const dead = deadCheckDraft(input, at, sown);
  return [...cutDrafts(input, at, sown), ...(dead ? [dead] : [])];
}

function plannedDrafts(input: PracticeInput, at: StandInBed, gaps: readonly Gap[]): TaskDraft[] {
  const { stand, parts } = at;
  const wanted = stand.sow.day;
  const rule = sowWindow(parts, wanted, input.climate, input.garden.place.frostRisk);
  const gap = gapFor(gaps, wanted);
  const held = rule && heldInGap(rule, gap?.from, gap?.to === undefined ? undefined : addDays(gap.to, -1));
  if (held === undefined) return [noWindowDraft(at, wanted, gap)];
  const preferred = clampDay(wanted, held.window.earliest, held.window.latest);
  const sow = { ...held, window: { ...held.window, preferred } };
  const after = waitsFor(input, at.bed, gap, sow);
  const why: Reason[] = [
    {
      rule: 'cover-sow.planned',
      saw: { cover: coverName(stand.coverId), wanted, held: preferred },
      source: "the garden's own plan",
    },
    ...gapReasons(gap),
  ];
  return [
    orderDraft(input, at, sow),
    sowDraft(input, at, sow, after, why),
    checkDraft(at, preferred, false),
    ...laterDrafts(input, at, preferred),
  ];
}

/** A stand waits for the bed to be clear, and one sown in autumn for the compost that goes under it. */
function waitsFor(input: PracticeInput, bed: Bed, gap: Gap | undefined, sow: SowWindow): TaskDraft['after'] {
  const clear = gap?.before ? [{ key: clearKey(gap.before.planting.id), minDays: 0 }] : [];
  if (sow.half !== 'autumn') return clear;
  return [...clear, { key: topdressKey(bed.id, seasonAfter(input.climate, sow.window.preferred)), minDays: 0 }];
}

/** The gap a planned sowing day lies in, or the next one to open. */
function gapFor(gaps: readonly Gap[], wanted: Day): Gap | undefined {
  return gaps.find((gap) => gap.to === undefined || gap.to > wanted);
}

function gapReasons(gap: Gap | undefined): Reason[] {
  if (gap?.before?.to === undefined) return [];
  return [
    {
      rule: 'cover-sow.gap',
      saw: {
        before: gap.before.crop.name.toLowerCase(),
        from: gap.before.to,
        ...(gap.next && gap.to ? { next: gap.next.crop.name.toLowerCase(), to: gap.to } : {}),
      },
      source: "the garden's own plan",
    },
  ];
}

/** A planned cover that no rule lets in: mulch answers instead, said plainly. */
function noWindowDraft(at: StandInBed, wanted: Day, gap: Gap | undefined): TaskDraft {
  const name = coverName(at.stand.coverId);
  const from = gap?.from === undefined || gap.from < wanted ? wanted : gap.from;
  const latest = addDays(from, 14);
  return {
    key: `cover-no-window/stand:${at.stand.id}`,
    practice: 'cover-cropping',
    kind: 'mulch-instead',
    job: { id: 'mulch-instead', title: 'Mulch where no cover can be sown' },
    subject: draftOfStand(at).subject,
    weight: 'work',
    title: `Mulch ${at.bed.name}: no time for ${name}`,
    steps: [
      `The plan asks for ${name} here, but no sowing day fits between the crops and the season.`,
      'Lay shredded leaves or clean straw over the whole bed, a hand deep, and wet it so that it stays.',
    ],
    cautions: ['Straw or hay of unknown history may carry weedkiller: grow a few beans in a sample first.'],
    supplies: [{ what: 'leaves or straw', amount: { value: Math.round(areaOf(at.bed) * MULCH_DEPTH_MM), unit: 'L' } }],
    window: { earliest: from, preferred: addDays(from, 3), latest },
    ifMissed: 'still do',
    missedNote: 'Bare soil loses its crumb to rain and frost: cover it whenever you can.',
    effortMinutes: effortOverArea(areaOf(at.bed), MULCH_MINUTES_PER_M2),
    needs: [],
    after: gap?.before ? [{ key: clearKey(gap.before.planting.id), minDays: 0 }] : [],
    confidence: 'derived',
    reasons: [
      {
        rule: 'cover-sow.no-window',
        saw: { cover: name, wanted },
        source: at.parts[0] ? originOf(at.parts[0].cover, 'autumnSow') : 'house default',
      },
      ...gapReasons(gap),
    ],
    makes: [],
  };
}

/** Depth of a loose winter mulch (leaves 2–3 in, common practice). */
const MULCH_DEPTH_MM = 65;

/** A suggestion for a gap nobody planned a cover for. */
function gapDrafts(input: PracticeInput, bed: Bed, gap: Gap, stands: readonly Stand[]): TaskDraft[] {
  const from = gap.from === undefined || gap.from < input.today ? input.today : gap.from;
  if (from > input.until || covered(input, gap, from, stands, bed)) return [];
  if (gap.to !== undefined && daysBetween(from, gap.to) < LEAST_GAP_DAYS) return [];
  const suggestion = suggestedStand(input, bed, gap, from);
  if (suggestion === undefined) return [];
  const after = waitsFor(input, bed, gap, suggestion.sow);
  const draft = sowDraft(input, suggestion.at, suggestion.sow, after, [suggestion.why, ...gapReasons(gap)]);
  return [
    {
      ...draft,
      steps: [
        ...draft.steps,
        'This is a suggestion: any cover that suits the gap serves. Mark it skipped if you mulch instead.',
      ],
    },
  ];
}

/** Whether a living or planned stand already holds a gap. */
function covered(input: PracticeInput, gap: Gap, from: Day, stands: readonly Stand[], bed: Bed): boolean {
  return stands.some((stand) => {
    if (gap.to !== undefined && stand.sow.day >= gap.to) return false;
    if (!stand.sow.happened) return stand.sow.day >= addDays(gap.from ?? from, -LEAST_GAP_DAYS);
    const ended = stand.deadOn ?? stand.cutOn ?? winterEnd(input, stand, bed);
    return ended === undefined || earliestOf(ended, from) === from;
  });
}

/** The day a winter-killed stand is over: the middle of the winter after its sowing. */
function winterEnd(input: PracticeInput, stand: Stand, bed: Bed): Day | undefined {
  const at = standInBed(stand, bed);
  const lives = at.parts.some(({ cover }) => situationOf(cover, stand.sow.day, input.climate) !== 'summer-sown');
  return lives ? undefined : addDays(stand.sow.day, WINTER_KILLED_AFTER_DAYS);
}

/** Days after an autumn sowing by which a winter-killed stand lies flat and its bed counts as open again. */
const WINTER_KILLED_AFTER_DAYS = 210;
