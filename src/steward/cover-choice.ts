/**
 * Whether a cover or a mulch somebody chooses for a bed can be meant: told with the two dates that do not go together.
 */

import { fullDay } from '../digest/words.ts';
import type { Garden, Stand } from '../garden/garden.ts';
import { suggestion } from '../garden/nearest-name.ts';
import type { Problem } from '../garden/problem.ts';
import { coverCropById } from '../handbook/cover-crops.ts';
import { coverMixById } from '../handbook/cover-mixes.ts';
import { addDays, type Day, isDay } from '../measures/days.ts';
import type { UnitSystem } from '../measures/units.ts';
import { cropSpans } from '../practices/bed-timeline.ts';
import { standSpans } from '../practices/cover-cropping/fit/stand-spans.ts';
import { coverName } from '../practices/covers.ts';
import { planningInput, type VersionedView } from './planner.ts';
import type { CoverChoice } from './steward.ts';

/** How far ahead a bed may be chosen for, days: two years. */
const AHEAD_DAYS = 731;

/** Everything that speaks against a choice. */
export function choiceProblems(view: VersionedView, choice: CoverChoice): Problem[] {
  const { garden, plan } = view;
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
      return dayProblems('the first day of the mulch', choice.from, plan.today);
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
  const last = addDays(today, AHEAD_DAYS);
  if (isDay(day) && day >= today && day <= last) return [];
  return [{ where, what: `"${day}" cannot be used.`, mend: `Give a day from ${today} to ${last}.` }];
}

type StandPlanned = Extract<CoverChoice, { kind: 'stand-planned' }>;

function standProblems(view: VersionedView, choice: StandPlanned): Problem[] {
  const days = dayProblems('the sowing day', choice.sowOn, view.plan.today);
  return days.length > 0 ? days : [...cropProblems(view, choice), ...overlapProblems(view, choice)];
}

/** A crop that grows in the bed on the day. */
function cropProblems({ garden, climate }: VersionedView, { bedId, sowOn }: StandPlanned): Problem[] {
  const growing = cropSpans(garden, bedId, climate).find(
    ({ from, to }) => from <= sowOn && (to === undefined || sowOn <= to),
  );
  if (growing === undefined) return [];
  const { crop, from, to } = growing;
  const dated = (day: Day): string => fullDay(day, garden.place.units);
  const grows = to === undefined ? 'and never leaves the bed' : `until about ${dated(to)}`;
  return [
    {
      where: 'the sowing day',
      what: `${crop.name} grows there from ${dated(from)} ${grows}; ${dated(sowOn)} lies in its time.`,
      mend: to === undefined ? 'Choose another bed.' : `Sow from ${dated(addDays(to, 1))} on.`,
    },
  ];
}

/** Another cover that stands, or is meant to stand, in the bed on the day. */
function overlapProblems(view: VersionedView, { bedId, sowOn, standId, instead = [] }: StandPlanned): Problem[] {
  const { garden } = view;
  const { units } = garden.place;
  const taken = garden.stands.filter(({ id }) => id === standId);
  if (taken.length > 0 && !instead.includes(standId)) return [overlap({ stand: taken[0], sowOn, units })];
  return standSpans(planningInput(view), bedId)
    .filter(({ stand }) => !instead.includes(stand.id))
    .filter(({ from, ends }) => from <= sowOn && (ends === undefined || sowOn <= ends))
    .map(({ stand, ends }) => overlap({ stand, sowOn, ends, units }));
}

interface Overlap {
  stand: Stand | undefined;
  sowOn: Day;
  ends?: Day | undefined;
  units: UnitSystem;
}

function overlap({ stand, sowOn, ends, units }: Overlap): Problem {
  const dated = (day: Day): string => fullDay(day, units);
  const name = capital(coverName(stand?.coverId ?? ''));
  const there = `${name} ${stand?.sow.happened ? 'stands' : 'is planned'} there from ${dated(stand?.sow.day ?? sowOn)}`;
  return {
    where: 'the sowing day',
    what: `${there}${ends === undefined ? '' : ` to about ${dated(ends)}`}; ${dated(sowOn)} lies in its time.`,
    mend: stand?.sow.happened
      ? 'Cut it first, or choose a later day.'
      : 'Take that one out of the plan, or have this one take its place.',
  };
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
