/**
 * Mulch on bare ground: the answer wherever no cover is sown.
 */

import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import type { Reason, TaskDraft, TaskKey } from '../draft.ts';
import { autumnTopdressKey } from '../keys.ts';
import { BARE_DEPTH_MM } from '../mulch-layer.ts';
import type { Findings, PracticeInput, Uncovered } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { type BareWindow, bareWindows } from './bare-window.ts';
import { amountReason, CARRYING_CAUTIONS, draftOnBed, mulchAmount, mulchSupply } from './mulch.ts';

/** A stretch of bare ground with the time to mulch it. */
interface BareTime {
  bed: Bed;
  bare: Uncovered;
  when: BareWindow;
}

const MULCH_WORDS = {
  leaves: 'shredded leaves',
  straw: 'clean straw',
  either: 'shredded leaves or clean straw',
} as const;

/** Said of leaves that are wanted before this year's are down (common practice). */
const LAST_YEARS_LEAVES = 'Use leaves you kept from last autumn; straw does as well until this year’s are down.';

/** Every mulch on bare ground: one a bed and season, and one for every planned stand that no rule lets in. */
export function bareBedDrafts(input: PracticeInput, found: Findings): TaskDraft[] {
  const times = input.garden.beds.flatMap((bed) =>
    [...inBed(found.uncovered, bed.id)]
      .sort(byTime)
      .flatMap((bare) => bareWindows(input, bare).map((when): BareTime => ({ bed, bare, when }))),
  );
  return times
    .filter((time, i) => time.bare.inPlaceOf !== undefined || isFirst(time, times.slice(0, i)))
    .map((time) => bareDraft(input, time));
}

/** Whether nothing before it mulches the same bed for the same winter or summer. */
function isFirst({ bed, when }: BareTime, before: readonly BareTime[]): boolean {
  return !before.some((other) => other.bed.id === bed.id && sameTime(other.when, when));
}

function sameTime(a: BareWindow, b: BareWindow): boolean {
  return a.season === b.season && (a.freeze === undefined) === (b.freeze === undefined);
}

/** Refused stands first: their task tells the gardener so. */
function byTime(a: Uncovered, b: Uncovered): number {
  const order = ({ inPlaceOf, from }: Uncovered) => `${inPlaceOf === undefined ? 1 : 0} ${from} ${inPlaceOf?.standId}`;
  return order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0;
}

/** The task's key: by the stand it stands in for, else by the bed and the season it is for. */
function keyOf({ bed, bare: { inPlaceOf }, when: { season, freeze } }: BareTime): TaskKey {
  if (inPlaceOf !== undefined) return `cover-no-window/stand:${inPlaceOf.standId}`;
  return `mulch-bare/bed:${bed.id}/${season}${freeze === undefined ? '/in-season' : ''}`;
}

function bareDraft(input: PracticeInput, time: BareTime): TaskDraft {
  const { bed, bare, when } = time;
  const { window, freeze } = when;
  const cover = bare.inPlaceOf?.cover;
  const compost = autumnTopdressKey(bed.id, seasonAfter(input.climate, window.preferred));
  const before = [...bare.after, ...(when.inAutumn ? [compost] : [])];
  return {
    ...draftOnBed(input, bed),
    key: keyOf(time),
    kind: 'mulch-bare-bed',
    job: { id: 'mulch-bare-bed', title: 'Mulch bare ground' },
    title: cover === undefined ? `Mulch ${bed.name}, where no cover grows` : `Mulch ${bed.name}: no time for ${cover}`,
    steps: [
      ...(cover === undefined ? [] : [`The plan asks for ${cover} here, but no sowing day fits.`]),
      `Lay ${MULCH_WORDS[bare.mulch ?? 'either']} over the whole bed: ${mulchAmount(bed, BARE_DEPTH_MM)}.`,
      "Spread this season's compost first where it is at hand; if it comes later, rake the mulch back for it.",
      ...(bare.mulch === 'leaves' && !when.inAutumn ? [LAST_YEARS_LEAVES] : []),
      'When the bed is next sown or planted, rake it aside first: it serves again beside the rows or in a pile.',
      'Wet it so that it stays; a few sticks or a net hold it in wind.',
    ],
    cautions: CARRYING_CAUTIONS,
    supplies: [mulchSupply(bed, BARE_DEPTH_MM, bare.mulch), { what: 'barrow and rake' }],
    window,
    ifMissed: freeze === undefined && cover === undefined ? 'drop' : 'still do',
    missedNote:
      freeze === undefined
        ? 'Too late to be worth it once the next crop is near: until then sun and heavy rain seal bare ground.'
        : 'Bare soil loses its crumb and its nitrogen to winter rain: lay it on frozen ground rather than not at all.',
    after: before.map((key) => ({ key, minDays: 0 })),
    reasons: [...bare.why, timeReason(when), amountReason('mulch-bare.amount', bed, BARE_DEPTH_MM, 'veg:V22')],
  };
}

function timeReason({ window, freeze, days }: BareWindow): Reason {
  const from = window.earliest;
  return freeze === undefined
    ? {
        rule: 'mulch-bare.in-season',
        saw: { from, ...(days === undefined ? {} : { days }) },
        limit: window.latest,
        source: 'house default',
      }
    : { rule: 'mulch-bare.winter', saw: { from, freeze }, limit: window.latest, source: 'veg:V22' };
}
