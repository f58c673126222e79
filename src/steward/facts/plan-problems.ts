/**
 * Whether a plan of crops, or a wish for one, can be taken in.
 */
import { fullDay } from '../../digest/words.ts';
import { applyFact } from '../../garden/apply-fact.ts';
import type { Fact } from '../../garden/facts.ts';
import type { Bed, Garden } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import type { Problem } from '../../garden/problem.ts';
import { isMoreThan } from '../../garden/share-problems.ts';
import { vegetableById, vegetables } from '../../handbook/vegetables.ts';
import { type Day, inYear, isDay, latestOf, monthDayOf, yearOf } from '../../measures/days.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import { areaOf, isPermanent } from '../../practices/bed-timeline.ts';
import { offSeason, openWindow } from '../../practices/planting/off-season.ts';
import { isSeed, type PlantingInBed, plantingsIn, startWord } from '../../practices/planting/planting-in-bed.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { crowdsIn } from '../../practices/side-by-side.ts';
import { reasonSentence } from '../../schedule/explain.ts';
import type { CropPlan } from '../bed-plan/taken-plan.ts';
import { planningInput, type VersionedView } from '../planning/planner.ts';
import { crowdTold } from './crowded.ts';

/** Years ahead that crops may be planned for: the seasons a proposal may have, and one for what is sown in autumn. */
const YEARS_AHEAD = 6;

/** Everything that speaks against a plan. */
export function planProblems(view: VersionedView, plan: CropPlan): Problem[] {
  const problems = [
    ...plan.dropped.flatMap(({ id }) => droppedProblems(view.garden, id)),
    ...(plan.coversDropped ?? []).flatMap(({ standId }) => coverProblems(view.garden, standId)),
    ...plan.plantings.flatMap((row) => plantingProblems(view, plan, row)),
  ];
  if (problems.length > 0) return problems;
  const after = planned(view, plan);
  return [...crowdProblems(view, plan, after), ...seasonProblems(view, plan, after)];
}

function planned({ garden, plan: { today } }: VersionedView, plan: CropPlan): Garden {
  const entry = { entry: 0, recordedAt: `${today}T00:00:00.000Z`, recordedOn: today, by: '', fact: plan };
  return applyFact(garden, entry);
}

/** Crops whose day is farther outside their season than a planting is moved: they would stand in the plan and get no task. */
function seasonProblems(view: VersionedView, plan: CropPlan, garden: Garden): Problem[] {
  const input = { ...planningInput(view), garden };
  const isNew = (id: string): boolean => plan.plantings.some((row) => row.id === id);
  return garden.beds.flatMap((bed) =>
    plantingsIn(input, bed)
      .filter(({ planting }) => isNew(planting.id))
      .flatMap((at): Problem[] => {
        const { refused } = offSeason(input, at);
        if (refused === undefined) return [];
        const what = readableIn(garden.place.units, reasonSentence(refused), '');
        return [{ where: 'the day', what, mend: dayInstead(input, at) }];
      }),
  );
}

function dayInstead(input: PracticeInput, at: PlantingInBed): string {
  const { start } = at.planting;
  const from = latestOf(input.today, thereFrom(at.bed) ?? input.today);
  const dated = (day: Day): string => fullDay(day, input.garden.place.units);
  const other = start.how === 'sow' ? 'set-out' : 'sow';
  for (const how of [start.how, other] as const) {
    const window = openWindow(input, at, { how, from });
    if (window === undefined) continue;
    const days = `${dated(latestOf(window.earliest, from))} to ${dated(window.latest)}`;
    if (how === start.how) return `Give a day from ${days}, or choose another crop.`;
    return `${how === 'set-out' ? 'Set it out as plants' : `${isSeed({ planting: { ...at.planting, start: { ...start, how } } }) ? 'Sow' : 'Plant'} it in the bed`}, from ${days}, or choose another crop.`;
  }
  return 'Choose another crop.';
}

function droppedProblems({ plantings, place: { units } }: Garden, id: string): Problem[] {
  const planting = plantings.find((each) => each.id === id);
  const where = 'what is taken out';
  if (planting === undefined)
    return [{ where, what: `"${id}" is not in the plan.`, mend: 'Look at the beds once more.' }];
  if (!planting.start.happened) return [];
  const { cropId, start } = planting;
  const what = `${vegetableById(cropId).name} was ${startWord(cropId, start.how)} there on ${fullDay(start.day, units)}.`;
  return [{ where, what, mend: 'It is in the ground: mark it cleared when it is.' }];
}

function coverProblems({ stands }: Garden, standId: string): Problem[] {
  if (stands.some(({ id, sow }) => id === standId && !sow.happened)) return [];
  const what = `The cover "${standId}" is not in the plan.`;
  return [{ where: 'what is taken out', what, mend: 'Look at the beds once more.' }];
}

function plantingProblems({ garden, plan: { today } }: VersionedView, plan: CropPlan, row: PlannedRow): Problem[] {
  const { bedId, cropId, start, lastHarvest, areaM2, id } = row;
  const beds = garden.beds.map((bed) => bed.id);
  const bed = garden.beds.find((each) => each.id === bedId);
  const last = lastDay(today);
  const isDropped = plan.dropped.some((each) => each.id === id);
  return [
    ...(bed === undefined
      ? [{ where: 'the bed', what: `"${bedId}" is not a bed of this garden.`, mend: suggestion(bedId, beds) }]
      : []),
    ...cropProblems('the crop', cropId),
    ...(isDay(start.day) && start.day >= today && start.day <= last
      ? []
      : [{ where: 'the day', what: `"${start.day}" cannot be used.`, mend: `Give a day from ${today} to ${last}.` }]),
    ...(bed === undefined ? [] : beforeBedProblems(garden, bed, start.day)),
    ...(lastHarvest !== undefined && lastHarvest < start.day
      ? [{ where: 'the last harvest', what: `${lastHarvest} is before ${start.day}.`, mend: 'Give a later day.' }]
      : []),
    ...(bed !== undefined && areaM2 !== undefined && isMoreThan(areaM2, areaOf(bed))
      ? [shareProblem(garden, bed.name, areaM2, areaOf(bed))]
      : []),
    ...(garden.plantings.some((each) => each.id === id) && !isDropped
      ? [{ where: 'the crop', what: 'The same is planned there already.', mend: 'Give another day, or leave it.' }]
      : []),
  ];
}

/** A day before the bed is made. */
function beforeBedProblems({ place: { units } }: Garden, bed: Bed, day: Day): Problem[] {
  const there = thereFrom(bed);
  if (there === undefined || day >= there) return [];
  const what = `${bed.name} is not there before ${fullDay(there, units)}.`;
  return [{ where: 'the day', what, mend: `Give a day from ${there} on, or another bed.` }];
}

type PlannedRow = CropPlan['plantings'][number];

function shareProblem({ place: { units } }: Garden, name: string, areaM2: number, bedM2: number): Problem {
  const area = (value: number): string => formatQuantity({ value, unit: 'm2' }, units);
  return {
    where: 'the share of the bed',
    what: `${area(areaM2)} is more than ${name} has: ${area(bedM2)}.`,
    mend: 'Give less, or leave it empty for the whole bed.',
  };
}

function lastDay(today: Day): Day {
  return inYear(monthDayOf(today), yearOf(today) + YEARS_AHEAD);
}

function cropProblems(where: string, cropId: string): Problem[] {
  const ids = vegetables.map(({ id }) => id);
  return ids.includes(cropId)
    ? []
    : [{ where, what: `"${cropId}" is not a known crop.`, mend: suggestion(cropId, ids) }];
}

/** Crops of the plan that would stand in a bed together with others, where it has no room for all. */
function crowdProblems({ climate }: VersionedView, plan: CropPlan, after: Garden): Problem[] {
  const isNew = (id: string): boolean => plan.plantings.some((row) => row.id === id);
  return after.beds.flatMap((bed) =>
    crowdsIn(after, bed, climate)
      .filter(({ next, standing }) => [next, ...standing].some(({ planting }) => isNew(planting.id)))
      .map((crowd) => ({
        where: bed.name,
        what: crowdTold(after, bed, crowd),
        mend: 'Choose another day or bed, take the other out, or give each its share of the bed.',
      })),
  );
}

/** Everything that speaks against a wish: the same as in a garden file. */
export function wishProblems({ cropId }: Extract<Fact, { kind: 'crop-wished' }>): Problem[] {
  const unknown = cropProblems('the crop', cropId);
  if (unknown.length > 0) return unknown;
  const crop = vegetableById(cropId);
  if (!isPermanent(crop)) return [];
  const mend = 'Choose its bed yourself, in the table of the beds.';
  return [{ where: 'the crop', what: `${crop.name} stays where it is planted.`, mend }];
}

/** What speaks against taking a wish off: that it is none. */
export function noWishProblems({ wishes }: Garden, dropped: Extract<Fact, { kind: 'wish-dropped' }>): Problem[] {
  const { cropId, season } = dropped;
  if (wishes.some((wish) => wish.cropId === cropId && wish.season === season)) return [];
  return [{ where: 'The wish', what: 'It is not wished for any more.', mend: 'Look at the list once more.' }];
}
