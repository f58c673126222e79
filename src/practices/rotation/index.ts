/**
 * Rotation: the changeover from one crop to the next. A crop that is finished is cut at the soil line, its roots are
 * left in the ground, and the bed goes on to its next crop or a cover.
 */
import type { Bed } from '../../garden/garden.ts';
import { originOf, type SourceId } from '../../handbook/shapes.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { areaOf, type CropSpan, cropSpans } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { CUT_MINUTES_PER_M2, effortOverArea } from '../effort.ts';
import { clearKey } from '../keys.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { rotationSentences } from './sentences.ts';

/** Days a changeover may take once the last harvest is in: 0–7 in most handbooks, from memory. */
export const CHANGEOVER_DAYS = 7;

/** Years between two crops of one family in a bed, general rule (University of Nebraska). */
const RETURN_SOURCE: SourceId = 'veg:V36';

/** The rotation practice. */
export const rotation: Practice = {
  name: 'rotation',
  work: (input) => ({ drafts: input.garden.beds.flatMap((bed) => changeovers(input, bed)) }),
  sentences: rotationSentences,
};

function changeovers(input: PracticeInput, bed: Bed): TaskDraft[] {
  const spans = cropSpans(input.garden, bed.id, input.climate);
  return spans.flatMap((span) => {
    if (span.to === undefined || span.end === 'happened') return [];
    if (span.to > input.until || addDays(span.to, CHANGEOVER_DAYS) < input.garden.startedOn) return [];
    return [clearDraft(input, bed, { ...span, to: span.to }, spans)];
  });
}

type EndingSpan = CropSpan & { to: Day };

function clearDraft(input: PracticeInput, bed: Bed, span: EndingSpan, spans: readonly CropSpan[]): TaskDraft {
  const follower = followerOf(input, bed, span, spans);
  const latest = latestOf(span.to, earliestOf(addDays(span.to, CHANGEOVER_DAYS), follower.day ?? '9999-12-31'));
  return {
    key: clearKey(span.planting.id),
    practice: 'rotation',
    kind: 'clear-bed',
    job: isLifted(span)
      ? { id: 'lift-crop', title: 'Lift the last of the crop' }
      : { id: 'clear-bed', title: 'Clear the bed, leave the roots' },
    subject: { type: 'bed', id: bed.id, name: bed.name },
    weight: 'work',
    title: isLifted(span)
      ? `Lift the last ${span.crop.name.toLowerCase()} in ${bed.name}`
      : `Clear the ${span.crop.name.toLowerCase()} from ${bed.name}, leave the roots`,
    steps: clearSteps(span, follower),
    cautions: [
      'Keep diseased leaves and fruit out of the compost; bag them or follow local rules.',
      ...span.crop.cautions,
    ],
    supplies: [{ what: 'knife or loppers' }, { what: 'barrow for the tops' }],
    window: { earliest: span.to, preferred: earliestOf(addDays(span.to, 2), latest), latest },
    ifMissed: 'still do',
    missedNote: 'The bed still wants clearing, but what follows it is waiting and its own window may close.',
    effortMinutes: effortOverArea(areaOf(bed), CUT_MINUTES_PER_M2),
    needs: [],
    after: [],
    confidence: span.end === 'stated' ? 'recorded' : 'derived',
    reasons: clearReasons(span, follower, spans),
    makes: [{ makes: 'bed-cleared', plantingId: span.planting.id }],
  };
}

interface Follower {
  /** What goes into the bed next, in words. */
  what?: string;
  day?: Day;
  crop?: CropSpan;
}

/** The next thing in the bed after a crop: a cover stand or a crop, whichever comes first. */
function followerOf(input: PracticeInput, bed: Bed, span: EndingSpan, spans: readonly CropSpan[]): Follower {
  const crop = spans.find((other) => other.planting.id !== span.planting.id && other.from >= span.to);
  const stand = input.garden.stands
    .filter((row) => row.bedId === bed.id && row.sow.day >= span.to)
    .sort((a, b) => (a.sow.day < b.sow.day ? -1 : 1))[0];
  if (stand && (crop === undefined || stand.sow.day < crop.from)) {
    return { what: `a cover of ${coverName(stand.coverId)}`, day: stand.sow.day, ...(crop ? { crop } : {}) };
  }
  return crop ? { what: crop.crop.name.toLowerCase(), day: crop.from, crop } : {};
}

function clearSteps(span: CropSpan, follower: Follower): string[] {
  const next =
    follower.what === undefined || follower.day === undefined
      ? 'Nothing is planned here next: give the soil a cover or a blanket of leaves, never leave it bare.'
      : `Next in this bed: ${follower.what}, from ${dated(follower.day)}.${blanket(span, follower.day)}`;
  return [
    ...harvestSteps(span),
    ...(span.crop.nitrogen === 'legume-fixer'
      ? [`Leave every root: they hold nitrogen for what follows${hungry(follower)}.`]
      : []),
    'Chop the healthy tops into the compost, and rake the surface level by hand.',
    next,
  ];
}

/** Crops whose harvest is what grows in the ground: they are lifted, and no root is left. Common practice. */
const LIFTED: ReadonlySet<string> = new Set([
  'garlic',
  'onion-seed',
  'onion-sets',
  'green-onion',
  'shallot',
  'leek',
  'carrot',
  'parsnip',
  'celeriac',
  'beet',
  'radish',
  'winter-radish',
  'turnip',
  'rutabaga',
  'potato',
  'sweet-potato',
]);

function isLifted(span: CropSpan): boolean {
  return LIFTED.has(span.planting.cropId);
}

function harvestSteps(span: CropSpan): string[] {
  if (isLifted(span)) {
    return ['Lift the last of the crop: ease it up with a fork, without turning the soil.', 'Level the holes by hand.'];
  }
  return [
    'Gather the last of the crop.',
    'Cut the plants off at the soil line. Do not pull or dig: the roots rot into channels for air and water.',
  ];
}

/** Days a bed may lie open before it wants a blanket. House default. */
const OPEN_DAYS = 21;

function blanket(span: CropSpan, next: Day): string {
  if (span.to === undefined || daysBetween(span.to, next) <= OPEN_DAYS) return '';
  return ' Until then keep it covered: a cover if one still fits, else leaves or straw.';
}

function hungry(follower: Follower): string {
  const crop = follower.crop?.crop;
  return crop?.nitrogen === 'high' ? `, and ${crop.name.toLowerCase()} is a hungry crop` : '';
}

function clearReasons(span: EndingSpan, follower: Follower, spans: readonly CropSpan[]): Reason[] {
  const crop = span.crop.name.toLowerCase();
  const reasons: Reason[] = [endReason(span, crop)];
  if (follower.what !== undefined && follower.day !== undefined) {
    reasons.push({
      rule: 'changeover.next',
      saw: { next: follower.what, day: follower.day },
      limit: CHANGEOVER_DAYS,
      source: 'house default',
    });
  }
  const back = tooSoon(span, follower.crop, spans);
  return back ? [...reasons, back] : reasons;
}

function endReason(span: EndingSpan, crop: string): Reason {
  const saw = { crop, day: span.to };
  if (span.end === 'stated') return { rule: 'changeover.last-harvest', saw, source: "the garden's own plan" };
  if (span.end === 'first freeze') return { rule: 'changeover.killed', saw, source: "the garden's climate" };
  const { low, high } = span.crop.maturityDays;
  return {
    rule: 'changeover.maturity',
    saw: { ...saw, from: span.from, daysLow: low, daysHigh: high },
    source: originOf(span.crop, 'maturityDays'),
  };
}

/** A reason that warns when the following crop's family comes back to the bed too soon. */
function tooSoon(span: EndingSpan, next: CropSpan | undefined, spans: readonly CropSpan[]): Reason | undefined {
  if (next === undefined) return undefined;
  const before = spans
    .filter((other) => other.from < next.from && other.crop.rotationGroup === next.crop.rotationGroup)
    .at(-1);
  if (before === undefined || before.planting.id === next.planting.id) return undefined;
  const years = Math.round(daysBetween(before.from, next.from) / 365.25);
  if (years >= next.crop.rotationYears || span.crop.rotationYears >= 99) return undefined;
  return {
    rule: 'changeover.family-returns',
    saw: { next: next.crop.name.toLowerCase(), before: before.crop.name.toLowerCase(), years },
    limit: next.crop.rotationYears,
    source: RETURN_SOURCE,
  };
}
