/**
 * Two years of every bed: its crops, its covers with their odds, and the days in which a cover is sown or cut.
 */
import type { Bed, Stand } from '../garden/garden.ts';
import { addDays, type Day, dayOf, dayParts } from '../measures/days.ts';
import { cropSpans } from '../practices/bed-timeline.ts';
import { type BedGaps, bedGaps } from '../practices/cover-cropping/fit/bed-gaps.ts';
import { bloomOdds } from '../practices/cover-cropping/fit/bloom-odds.ts';
import type { StandSpan } from '../practices/cover-cropping/fit/stand-spans.ts';
import { winterOdds } from '../practices/cover-cropping/fit/winter-share.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { midwinterAfter } from '../practices/seasons.ts';
import { growingParts, standName } from '../practices/stand-cover.ts';
import type { Plan } from '../schedule/plan.ts';
import { fitTold, oddsLines } from './fit-words.ts';

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

/** Every bed's two years from the first of this month, as the plan has them. */
export function bedYears(input: PracticeInput, plan: Plan): BedYears[] {
  const { from, to } = shownDays(input.today);
  const inView = (span: { from: Day; to?: Day }): boolean => span.from <= to && (span.to ?? to) >= from;
  return input.garden.beds.map((bed) => {
    const gaps = bedGaps(input, bed);
    const crops = cropSpans(input.garden, bed.id, input.climate).map(
      (span): Held => ({
        what: span.crop.name.toLowerCase(),
        from: span.from,
        ...(span.to === undefined ? {} : { to: span.to }),
        kind: 'crop',
        odds: [],
      }),
    );
    const covers = gaps.stands.map((span) => coverHeld(input, span, gaps, plan));
    const held = [...crops, ...covers].filter(inView).sort((a, b) => (a.from < b.from ? -1 : 1));
    return { bed, held, windows: windowsOf(plan, bed).filter(inView) };
  });
}

function coverHeld(input: PracticeInput, { stand, from, ends }: StandSpan, gaps: BedGaps, plan: Plan): Held {
  return {
    what: standName(stand),
    from,
    ...(ends === undefined ? {} : { to: ends }),
    kind: stand.sow.happened ? 'sown' : 'planned',
    odds: stand.sow.happened ? oddsOfSown(input, stand, plan) : oddsInGap(stand.coverId, stand.sow.day, gaps),
  };
}

const ODDS_LINES: ReadonlySet<string> = new Set(['Grown in time', 'Winter', 'Flowers']);

/** The odds of a planned cover, as the gap it is planned for has them. */
function oddsInGap(coverId: string, sowOn: Day, { gaps }: BedGaps): string[] {
  const gap = gaps.find(({ span: { from, to } }) => (from ?? sowOn) <= sowOn && sowOn < (to ?? addDays(sowOn, 1)));
  const fits = gap?.fits.filter(({ choice }) => choice.choice === 'cover' && choice.coverId === coverId) ?? [];
  return fits.flatMap((fit) =>
    fitTold(fit)
      .lines.filter(({ what }) => ODDS_LINES.has(what))
      .map(({ what, text }) => `${what}: ${text}`),
  );
}

/** The odds of a cover that stands: the winter that is still to come, and its flowers where it is not cut yet. */
function oddsOfSown(input: PracticeInput, stand: Stand, { tasks }: Plan): string[] {
  const { id, sow, cutOn, deadOn } = stand;
  if (cutOn !== undefined || deadOn !== undefined) return [];
  const parts = growingParts(stand);
  const cut = tasks.find(({ kind, subject }) => kind === 'cut-cover' && subject.id === id)?.window.latest;
  const isBefore = input.today <= midwinterAfter(input.climate, sow.day);
  const winter = isBefore ? winterOdds(input, parts, sow.day) : undefined;
  const bloom = bloomOdds(input, parts, sow.day, cut);
  const known = { ...(winter ? { winter } : {}), ...(bloom ? { bloom } : {}) };
  return oddsLines(known).map(({ what, text }) => `${what}: ${text}`);
}

const DOING: Readonly<Record<string, DoingWindow['doing']>> = {
  'sow-cover': 'sow',
  'sow-cover-again': 'sow',
  'cut-cover': 'cut',
};

function windowsOf({ tasks }: Plan, bed: Bed): DoingWindow[] {
  return tasks.flatMap(({ kind, key, subject, window, state }): DoingWindow[] => {
    const doing = DOING[kind];
    if (doing === undefined || state !== 'open' || subject.type !== 'stand' || subject.bedId !== bed.id) return [];
    return [{ doing, key, what: subject.grows ?? subject.name, from: window.earliest, to: window.latest }];
  });
}
