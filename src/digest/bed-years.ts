/**
 * Every bed over eighteen months: its crops, its covers with their odds, its mulch, and what is done in it on which days.
 */
import type { DaySpan } from '../climate/season-course.ts';
import type { Bed, Garden, Stand, Subject } from '../garden/garden.ts';
import type { RotationGroup } from '../handbook/shapes/plant.ts';
import { addDays, type Day } from '../measures/days.ts';
import { cropSpans } from '../practices/bed-timeline.ts';
import { bloomOdds } from '../practices/cover-cropping/fit/bloom-odds.ts';
import { establishment } from '../practices/cover-cropping/fit/establish.ts';
import { type StandSpan, standSpans } from '../practices/cover-cropping/fit/stand-spans.ts';
import { winterOdds } from '../practices/cover-cropping/fit/winter-share.ts';
import { coverParts } from '../practices/covers.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { midwinterAfter } from '../practices/seasons.ts';
import { growingParts, standName } from '../practices/stand-cover.ts';
import type { Plan } from '../schedule/plan.ts';
import { type BedDoing, doingsOf } from './bed-doings.ts';
import { coversToSow } from './cover-sowings.ts';
import { oddsLines } from './fit-words.ts';
import { yearSpan } from './year-span.ts';

/** Something that holds a bed for a time; without an end it stays. */
export interface Held {
  /** The planting or stand it is, by its id; absent for mulch. */
  id?: string;
  kind: 'crop' | 'cover' | 'mulch';
  what: string;
  /** A crop's family. */
  family?: RotationGroup;
  /** The share of its bed a crop takes, m²; absent where it has the whole. */
  areaM2?: number;
  /** The first day; of what is planned the day it is reckoned with. */
  from: Day;
  /** The last day. */
  to?: Day;
  /** It is not in the ground yet. */
  planned: boolean;
  /** What is known of its odds, in words; may hold marked days. */
  odds: readonly string[];
}

/** A bed's eighteen months. */
export interface BedYears {
  bed: Bed;
  held: readonly Held[];
  doings: readonly BedDoing[];
}

/** What of a plan is drawn. */
type Tasks = Pick<Plan, 'tasks'>;

/** Every bed over the eighteen months about today, as the plan has them. */
export function bedYears(input: PracticeInput, plan: Tasks): BedYears[] {
  const span = yearSpan(input.today);
  return input.garden.beds.map((bed) => {
    const covers = standSpans(input, bed.id).map((stand) => coverHeld(input, stand, plan));
    const held = [...cropsHeld(input, bed), ...covers, ...mulchesHeld(input, bed)];
    const meant = [...held, ...proposalsHeld(input.garden, bed, plan, held)];
    const all = [...meant, ...bareMulchesHeld(input.garden, bed, plan, meant)];
    return {
      bed,
      held: all.filter((each) => liesIn(each, span)).sort((a, b) => (a.from < b.from ? -1 : 1)),
      doings: doingsOf(input.garden, bed, plan).filter((each) => liesIn(each, span)),
    };
  });
}

/** Whether something lies in a span of days, in part at least. */
export function liesIn({ from, to }: { from: Day; to?: Day }, span: DaySpan): boolean {
  return from <= span.to && (to ?? span.to) >= span.from;
}

function cropsHeld({ garden, climate }: PracticeInput, bed: Bed): Held[] {
  return cropSpans(garden, bed.id, climate).map(({ planting, crop, from, to }) => ({
    id: planting.id,
    kind: 'crop',
    what: crop.name.toLowerCase(),
    family: crop.rotationGroup,
    ...(planting.areaM2 === undefined ? {} : { areaM2: planting.areaM2 }),
    from,
    ...(to === undefined ? {} : { to }),
    planned: !planting.start.happened,
    odds: [],
  }));
}

/** Mulch chosen for a span in place of a cover: the day after it is the next crop's. */
function mulchesHeld({ garden, today }: PracticeInput, bed: Bed): Held[] {
  return garden.mulches
    .filter(({ bedId }) => bedId === bed.id)
    .map(({ from, to, mulch }) => ({
      kind: 'mulch',
      what: `${mulch} mulch`,
      from,
      ...(to === undefined ? {} : { to: addDays(to, -1) }),
      planned: from > today,
      odds: [],
    }));
}

/** Mulch that the plan asks for on bare ground: it lies until the next thing goes in, or the next mulch over it. */
function bareMulchesHeld(garden: Garden, bed: Bed, { tasks }: Tasks, held: readonly Held[]): Held[] {
  const isHere = ({ kind, subject }: { kind: string; subject: Subject }): boolean =>
    kind === 'mulch-bare-bed' && subject.type === 'bed' && subject.id === bed.id;
  const open = tasks.filter((task) => task.state === 'open' && isHere(task));
  const laid = [
    ...garden.done.filter(isHere).map(({ on }) => ({ from: on, planned: false })),
    ...open.map(({ day }) => ({ from: day, planned: true })),
  ];
  return laid.map(({ from, planned }) => {
    const [next] = [...held, ...laid]
      .map((other) => other.from)
      .filter((day) => day > from)
      .sort();
    const to = next === undefined ? {} : { to: addDays(next, -1) };
    return { kind: 'mulch', what: 'mulch', from, ...to, planned, odds: [] };
  });
}

/** Covers that the plan proposes where nobody chose: each until it is cut, or until the next thing goes in. */
function proposalsHeld(garden: Garden, bed: Bed, plan: Tasks, held: readonly Held[]): Held[] {
  const proposed = coversToSow(garden, plan).filter((sowing) => sowing.proposed && sowing.bedId === bed.id);
  return proposed.map(({ standId, cover, day }) => {
    const cut = plan.tasks.find(({ kind, subject }) => kind === 'cut-cover' && subject.id === standId)?.day;
    const next = [...held, ...proposed.map((other) => ({ from: other.day }))].map(({ from }) => from);
    const [ends] = [...(cut === undefined ? [] : [cut]), ...next.map((from) => addDays(from, -1))]
      .filter((each) => each >= day)
      .sort();
    const what = `${cover}, the plan’s own proposal`;
    return { kind: 'cover', what, from: day, ...(ends === undefined ? {} : { to: ends }), planned: true, odds: [] };
  });
}

function coverHeld(input: PracticeInput, span: StandSpan, plan: Tasks): Held {
  const { stand, from, ends, sowing } = span;
  return {
    id: stand.id,
    kind: 'cover',
    what: standName(stand),
    from: sowing?.on ?? from,
    ...(ends === undefined ? {} : { to: ends }),
    planned: !stand.sow.happened,
    odds: stand.sow.happened ? oddsOfSown(input, stand, plan) : oddsOfPlanned(input, span, plan),
  };
}

/** The odds of a planned cover, for the very day it is reckoned to be sown on. */
function oddsOfPlanned(input: PracticeInput, { stand, sowing }: StandSpan, plan: Tasks): string[] {
  if (sowing === undefined) return [];
  const parts = coverParts(stand.coverId);
  const establish = establishment(input, parts, sowing.half, sowing.on);
  const winter = winterOdds(input, parts, sowing.on);
  const bloom = bloomOdds(input, parts, sowing.on, lastCutDay(plan, stand));
  return inWords({ ...(establish && { establish }), ...(winter && { winter }), ...(bloom && { bloom }) });
}

/** The odds of a cover that stands: the winter that is still to come, and its flowers where it is not cut yet. */
function oddsOfSown(input: PracticeInput, stand: Stand, plan: Tasks): string[] {
  const { sow, cutOn, deadOn } = stand;
  if (cutOn !== undefined || deadOn !== undefined) return [];
  const parts = growingParts(stand);
  const isBefore = input.today <= midwinterAfter(input.climate, sow.day);
  const winter = isBefore ? winterOdds(input, parts, sow.day) : undefined;
  const bloom = bloomOdds(input, parts, sow.day, lastCutDay(plan, stand));
  return inWords({ ...(winter && { winter }), ...(bloom && { bloom }) });
}

function lastCutDay({ tasks }: Tasks, { id }: Stand): Day | undefined {
  return tasks.find(({ kind, subject }) => kind === 'cut-cover' && subject.id === id)?.window.latest;
}

function inWords(known: Parameters<typeof oddsLines>[0]): string[] {
  return oddsLines(known).map(({ what, text }) => `${what}: ${text}`);
}
