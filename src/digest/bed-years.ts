/**
 * Two years of every bed: its crops, its covers with their odds, and the days in which a cover is sown or cut.
 */
import type { Bed, Stand } from '../garden/garden.ts';
import { addDays, type Day, dayOf, dayParts } from '../measures/days.ts';
import { cropSpans } from '../practices/bed-timeline.ts';
import { bloomOdds } from '../practices/cover-cropping/fit/bloom-odds.ts';
import { establishment } from '../practices/cover-cropping/fit/establish.ts';
import { type StandSpan, standSpans } from '../practices/cover-cropping/fit/stand-spans.ts';
import { winterOdds } from '../practices/cover-cropping/fit/winter-share.ts';
import { coverParts } from '../practices/covers.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { midwinterAfter } from '../practices/seasons.ts';
import { growingParts, standName } from '../practices/stand-cover.ts';
import type { Plan } from '../schedule/plan.ts';
import { oddsLines } from './fit-words.ts';

/** Days shown: two years. */
const SHOWN_DAYS = 731;

/** The days a year sheet shows: two years from the first of the month. */
export function shownDays(today: Day): { from: Day; to: Day } {
  const { year, month } = dayParts(today);
  const from = dayOf(year, month, 1);
  return { from, to: addDays(from, SHOWN_DAYS) };
}

/** Something that holds a bed for a time; without an end it stays. */
export interface Held {
  what: string;
  from: Day;
  to?: Day;
  /** A crop, a cover that was sown, or one that is only planned. */
  kind: 'crop' | 'sown' | 'planned';
  /** What is known of its odds, in words; may hold marked days. */
  odds: readonly string[];
}

/** Days in which a cover is to be sown or cut. */
export interface DoingWindow {
  doing: 'sow' | 'cut';
  key: TaskKey;
  what: string;
  from: Day;
  to: Day;
}

/** A bed's two years. */
export interface BedYears {
  bed: Bed;
  held: readonly Held[];
  windows: readonly DoingWindow[];
}

/** What of a plan is drawn. */
type Tasks = Pick<Plan, 'tasks'>;

/** Every bed's two years from the first of this month, as the plan has them. */
export function bedYears(input: PracticeInput, plan: Tasks): BedYears[] {
  const { from, to } = shownDays(input.today);
  const inView = (span: { from: Day; to?: Day }): boolean => span.from <= to && (span.to ?? to) >= from;
  return input.garden.beds.map((bed) => {
    const crops = cropSpans(input.garden, bed.id, input.climate).map(
      (span): Held => ({
        what: span.crop.name.toLowerCase(),
        from: span.from,
        ...(span.to === undefined ? {} : { to: span.to }),
        kind: 'crop',
        odds: [],
      }),
    );
    const covers = standSpans(input, bed.id).map((span) => coverHeld(input, span, plan));
    const held = [...crops, ...covers].filter(inView).sort((a, b) => (a.from < b.from ? -1 : 1));
    return { bed, held, windows: windowsOf(plan, bed).filter(inView) };
  });
}

function coverHeld(input: PracticeInput, span: StandSpan, plan: Tasks): Held {
  const { stand, from, ends } = span;
  return {
    what: standName(stand),
    from,
    ...(ends === undefined ? {} : { to: ends }),
    kind: stand.sow.happened ? 'sown' : 'planned',
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

const DOING: Readonly<Record<string, DoingWindow['doing']>> = {
  'sow-cover': 'sow',
  'sow-cover-again': 'sow',
  'cut-cover': 'cut',
};

function windowsOf({ tasks }: Tasks, bed: Bed): DoingWindow[] {
  return tasks.flatMap(({ kind, key, subject, window, state }): DoingWindow[] => {
    const doing = DOING[kind];
    if (doing === undefined || state !== 'open' || subject.type !== 'stand' || subject.bedId !== bed.id) return [];
    return [{ doing, key, what: subject.grows ?? subject.name, from: window.earliest, to: window.latest }];
  });
}
