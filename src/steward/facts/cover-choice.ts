/**
 * Whether a cover or a mulch somebody chooses for a bed can be meant: told with the two dates that do not go together.
 */

import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import type { Problem } from '../../garden/problem.ts';
import { coverCropById } from '../../handbook/cover-crops.ts';
import { coverMixById } from '../../handbook/cover-mixes.ts';
import { capital } from '../../measures/capital.ts';
import { addDays, type Day, daysBetween, earliestOf, isDay, latestOf } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { cropSpans, nextCrop } from '../../practices/bed-timeline.ts';
import { LEAST_GROWTH_DAYS } from '../../practices/cover-cropping/cut-window.ts';
import { gapsAhead } from '../../practices/cover-cropping/fit/gaps-ahead.ts';
import { inTheWay } from '../../practices/cover-cropping/fit/in-the-way.ts';
import { lastDayAhead } from '../../practices/cover-cropping/fit/last-day-ahead.ts';
import { type StandSpan, standSpans } from '../../practices/cover-cropping/fit/stand-spans.ts';
import { coverName } from '../../practices/covers.ts';
import type { CoverChoice } from '../doings/steward.ts';
import { planningInput, type VersionedView } from '../planning/planner.ts';

/** Everything that speaks against a choice. */
export function choiceProblems(view: VersionedView, choice: CoverChoice): Problem[] {
  const { garden } = view;
  const beds = garden.beds.map(({ id }) => id);
  if (!beds.includes(choice.bedId)) {
    return [
      {
        where: 'the bed',
        what: `"${choice.bedId}" is not a bed of this garden.`,
        mend: suggestion(choice.bedId, beds),
      },
    ];
  }
  switch (choice.kind) {
    case 'stand-dropped':
      return droppedProblems(garden, choice.standId);
    case 'mulch-planned':
      return mulchProblems(view, choice);
    case 'stand-planned':
      return [...coverProblems(choice.coverId), ...standProblems(view, choice)];
    default:
      return choice satisfies never;
  }
}

function droppedProblems({ stands, place: { units } }: Garden, standId: string): Problem[] {
  const stand = stands.find(({ id }) => id === standId);
  if (stand === undefined)
    return [{ where: 'the stand', what: `"${standId}" is not in the plan.`, mend: 'Look at the bed once more.' }];
  if (!stand.sow.happened) return [];
  const what = `${capital(coverName(stand.coverId))} was sown there on ${fullDay(stand.sow.day, units)}.`;
  return [{ where: 'the stand', what, mend: 'It is there; mark it cut when it is.' }];
}

function coverProblems(coverId: string): Problem[] {
  if (coverCropById.has(coverId) || coverMixById.has(coverId)) return [];
  const known = [...coverCropById.keys(), ...coverMixById.keys()];
  return [{ where: 'the cover', what: `"${coverId}" is not a known cover or mix.`, mend: suggestion(coverId, known) }];
}

function dayProblems(where: string, day: string, today: Day): Problem[] {
  const last = lastDayAhead(today);
  if (isDay(day) && day >= today && day <= last) return [];
  return [{ where, what: `"${day}" cannot be used.`, mend: `Give a day from ${today} to ${last}.` }];
}

type StandPlanned = Extract<CoverChoice, { kind: 'stand-planned' }>;
type MulchPlanned = Extract<CoverChoice, { kind: 'mulch-planned' }>;

const SOWING_DAY = 'the sowing day';
const MULCH_DAY = 'the first day of the mulch';

function standProblems(view: VersionedView, choice: StandPlanned): Problem[] {
  const { bedId, sowOn } = choice;
  const days = dayProblems(SOWING_DAY, sowOn, view.plan.today);
  if (days.length > 0) return days;
  const growing = growingProblems(view, { where: SOWING_DAY, bedId, from: sowOn });
  return [...growing, ...timeProblems(view, choice), ...overlapProblems(view, choice)];
}

interface Covered {
  where: string;
  bedId: string;
  from: Day;
  /** The day after the last; absent for a single day. */
  to?: Day | undefined;
}

/** A crop that grows in the bed on the days. */
function growingProblems(view: VersionedView, { where, bedId, from, to }: Covered): Problem[] {
  const { garden, climate } = view;
  const growing = cropSpans(garden, bedId, climate).find(
    (span) => (to === undefined ? span.from <= from : span.from < to) && (span.to === undefined || from <= span.to),
  );
  if (growing === undefined) return [];
  const dated = (day: Day): string => fullDay(day, garden.place.units);
  const grows = growing.to === undefined ? 'and never leaves the bed' : `until about ${dated(growing.to)}`;
  const lies =
    growing.from <= from
      ? `${dated(from)} lies in its time.`
      : `the days from ${dated(from)} to ${dated(to ?? from)} run into its time.`;
  return [
    {
      where,
      what: `${growing.crop.name} grows there from ${dated(growing.from)} ${grows}; ${lies}`,
      mend: gapsTold(view, bedId),
    },
  ];
}

/** The days a bed is free, as the way out. */
function gapsTold(view: VersionedView, bedId: string): string {
  const { garden, plan } = view;
  const bed = garden.beds.find(({ id }) => id === bedId);
  const gaps = bed === undefined ? [] : gapsAhead(planningInput(view), bed);
  if (gaps.length === 0) return 'Choose another bed: this one has no gap in the next two years.';
  const dated = (day: Day): string => fullDay(day, garden.place.units);
  const spans = gaps.map(({ from, to }) => {
    const start = from === undefined || from <= plan.today ? 'now' : `from ${dated(from)}`;
    return to === undefined ? `${start} on` : `${start} until ${dated(to)}`;
  });
  return `The bed is free ${spans.join('; ')}.`;
}

/** A crop that goes in before the cover has grown. */
function timeProblems({ garden, climate, plan }: VersionedView, { bedId, sowOn, coverId }: StandPlanned): Problem[] {
  const next = nextCrop(garden, bedId, climate, sowOn);
  const days = next === undefined ? undefined : daysBetween(sowOn, next.from);
  if (next === undefined || days === undefined || days >= LEAST_GROWTH_DAYS) return [];
  const dated = (day: Day): string => fullDay(day, garden.place.units);
  const lastDay = addDays(next.from, -LEAST_GROWTH_DAYS);
  return [
    {
      where: SOWING_DAY,
      what:
        `${next.crop.name} goes in there on ${dated(next.from)}; ${coverName(coverId)} sown on ${dated(sowOn)} would have ` +
        `${days} ${days === 1 ? 'day' : 'days'} to grow, and ${LEAST_GROWTH_DAYS} are the least.`,
      mend:
        lastDay < plan.today ? 'Mulch the bed until then.' : `Sow by ${dated(lastDay)}, or mulch the bed until then.`,
    },
  ];
}

/** Another cover that stands, or is meant to stand, in the bed when this one would. */
function overlapProblems(view: VersionedView, choice: StandPlanned): Problem[] {
  const { bedId, sowOn, standId, coverId, instead = [] } = choice;
  const input = planningInput(view);
  const { stands, place } = view.garden;
  const same = stands.find(({ id }) => id === standId);
  const meant = { id: '', bedId, coverId, sow: { day: sowOn, happened: false }, regrowthCheckedOn: [] };
  const spans = standSpans(input, bedId).filter(({ stand }) => !instead.includes(stand.id));
  const inWay = spans.filter(
    (span) => span.stand.id === standId || standsOn(span, sowOn) || inTheWay(input, span.stand, meant),
  );
  if (inWay.length > 0) return inWay.map((span) => overlapTold(span, choice, place.units));
  return same === undefined || instead.includes(standId)
    ? []
    : [overlapTold({ stand: same, from: same.sow.day }, choice, place.units)];
}

/** Whether a cover that was sown holds its bed on a day. */
function standsOn({ stand, from, ends }: StandSpan, day: Day): boolean {
  return stand.sow.happened && from <= day && (ends === undefined || day <= ends);
}

function overlapTold(span: StandSpan, { coverId, sowOn }: StandPlanned, units: UnitSystem): Problem {
  const dated = (day: Day): string => fullDay(day, units);
  const told = standTold(span, units);
  const first = earliestOf(span.from, span.stand.sow.day);
  const lies =
    first <= sowOn
      ? `${dated(sowOn)} lies in its time.`
      : `${coverName(coverId)} sown on ${dated(sowOn)} would still stand there.`;
  const mend = span.stand.sow.happened
    ? 'Cut it first, or choose a later day.'
    : 'Take that one out of the plan, or have this one take its place.';
  return { where: SOWING_DAY, what: `${told}; ${lies}`, mend };
}

/** A cover with the days it holds its bed. */
function standTold({ stand, from, ends, sow }: StandSpan, units: UnitSystem): string {
  const dated = (day: Day): string => fullDay(day, units);
  const name = capital(coverName(stand.coverId));
  const holds = ends === undefined ? '' : ` to about ${dated(ends)}`;
  if (stand.sow.happened) return `${name} stands there from ${dated(from)}${holds}`;
  const window = sow === undefined ? '' : ` (it may be sown from ${dated(sow.earliest)} to ${dated(sow.latest)})`;
  const until = ends === undefined ? '' : ` and holds the bed${holds}`;
  return `${name} is planned there for ${dated(stand.sow.day)}${window}${until}`;
}

function mulchProblems(view: VersionedView, choice: MulchPlanned): Problem[] {
  const { bedId, from, to, instead = [] } = choice;
  const { garden, plan } = view;
  const { units } = garden.place;
  const days = dayProblems(MULCH_DAY, from, plan.today);
  if (days.length > 0) return days;
  const growing = growingProblems(view, { where: MULCH_DAY, bedId, from });
  if (growing.length > 0) return growing;
  if (to !== undefined && !(isDay(to) && to > from)) return [endsFirst(from, to, units)];
  const stands = standSpans(planningInput(view), bedId)
    .filter(({ stand }) => !instead.includes(stand.id))
    .filter((span) => (to === undefined || sownFrom(span) < to) && (span.ends === undefined || from <= span.ends));
  return [
    ...growingProblems(view, { where: MULCH_DAY, bedId, from, to }),
    ...stands.map((span): Problem => {
      const what = `${standTold(span, units)}; a mulch from ${fullDay(from, units)} would lie on it.`;
      const mend = span.stand.sow.happened
        ? 'Mulch once it is cut or dead.'
        : 'Take that one out of the plan, or have the mulch take its place.';
      return { where: MULCH_DAY, what, mend };
    }),
  ];
}

/** The planned day counts of a cover that is only meant: the mulch lies until then. */
function sownFrom({ stand, from }: StandSpan): Day {
  return latestOf(from, stand.sow.day);
}

function endsFirst(from: Day, to: string, units: UnitSystem): Problem {
  const end = isDay(to) ? fullDay(to, units) : `"${to}"`;
  const what = `It would begin on ${fullDay(from, units)} and end on ${end}.`;
  return { where: 'the last day of the mulch', what, mend: 'Give an end that comes after its first day.' };
}
