/**
 * The crops of the handbook held against one bed and season: what each would break there, and when it would go in.
 */
import type { Bed, Planting } from '../../garden/garden.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import { type Day, latestOf } from '../../measures/days.ts';
import { cropYear, isPermanent } from '../../practices/bed-timeline.ts';
import { cropLockOut } from '../../practices/lock-out.ts';
import type { How } from '../../practices/planting/first-day.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { brokenIn } from '../../practices/rotation-plan/broken.ts';
import { sickReason } from '../../practices/rotation-plan/garden-problem.ts';
import { type BrokenRule, isHard } from '../../practices/rotation-plan/looked-at.ts';
import type { RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { isPastUnknown } from '../../practices/rotation-plan/waits.ts';
import { seasonAfter } from '../../practices/seasons.ts';
import { growing } from '../rotation-plan/growing.ts';
import { withDates } from '../rotation-plan/placement-dates.ts';
import { bestDay, type CoverCost, coverCosts } from './best-day.ts';
import { plannedProblem } from './season-table.ts';

/** When a crop may go in, and the day proposed. */
export interface CropDays {
  how: How;
  day: Day;
  earliest: Day;
  latest: Day;
}

/** A crop that could be chosen. */
export interface CropChoice {
  crop: Vegetable;
  /** Absent where the climate tells no day, or the last one is past. */
  days?: CropDays;
  broken: readonly BrokenRule[];
  /** Covers of the bed that go, or are cut short, where it goes in on the day proposed. */
  costs: readonly CoverCost[];
  /** Whether nobody wrote down if kin of it stood there not long ago. */
  pastUnknown: boolean;
}

/** A bed and a season, with what is only planned there and would go. */
export interface Spot {
  bed: Bed;
  season: number;
  instead: readonly Planting[];
}

/** Every crop of the handbook at a spot: what breaks nothing first, then what breaks no rule that may not break. */
export function cropChoices(input: PracticeInput, spot: Spot): CropChoice[] {
  const without = asPlannedWithout(input, spot);
  const problem = plannedProblem(without, 1, vegetables);
  return vegetables
    .map((crop) => choiceAt(without, problem, spot, crop))
    .sort((a, b) => badness(a) - badness(b) || (a.crop.name < b.crop.name ? -1 : 1));
}

/** One crop at a spot. */
export function cropChoice(input: PracticeInput, spot: Spot, crop: Vegetable): CropChoice {
  const without = asPlannedWithout(input, spot);
  return choiceAt(without, plannedProblem(without, 1, [crop]), spot, crop);
}

/** What is only planned for a bed in a season. */
export function plannedAt({ garden, climate }: PracticeInput, bedId: string, season: number): Planting[] {
  return garden.plantings.filter((planting) => {
    const crop = vegetables.find(({ id }) => id === planting.cropId);
    if (crop === undefined || planting.bedId !== bedId || planting.start.happened) return false;
    return cropYear({ crop, from: planting.start.day }, climate) === season;
  });
}

/** The bed alone, without what would go: nothing of another bed is held against a crop here. */
function asPlannedWithout({ garden, ...rest }: PracticeInput, { bed, instead }: Spot): PracticeInput {
  const plantings = garden.plantings.filter((planting) => planting.bedId === bed.id && !instead.includes(planting));
  return { ...rest, garden: { ...garden, beds: [bed], plantings } };
}

function badness({ broken, days, costs }: CropChoice): number {
  const hard = broken.filter(isHard).length;
  const soft = broken.reduce((sum, { weight = 0 }) => sum + weight, 0);
  return 1000 * hard + 10 * soft + costs.length + (days === undefined ? 5000 : 0);
}

function choiceAt(input: PracticeInput, problem: RotationProblem, spot: Spot, crop: Vegetable): CropChoice {
  const { bed, season } = spot;
  const days = daysOf(input, spot, crop);
  const held = problem.beds.find(({ id }) => id === bed.id);
  const broken =
    held === undefined ? [] : [...lastingBreaks(held, season, crop), ...breaks(problem, held, season, crop)];
  return {
    crop,
    ...(days === undefined ? {} : { days }),
    broken: [...broken, ...sickness(input, spot, crop, days?.day)],
    costs: days === undefined ? [] : coverCosts(input, bed, { crop, how: days.how, day: days.day }),
    pastUnknown:
      held !== undefined &&
      !isPermanent(crop) &&
      isPastUnknown(held, seasonAfter(input.climate, input.today), crop, season),
  };
}

/** What the crop breaks, and what is broken in the bed only because of it. */
function breaks(
  problem: RotationProblem,
  held: RotationProblem['beds'][number],
  season: number,
  crop: Vegetable,
): BrokenRule[] {
  if (isPermanent(crop)) return [];
  const carried = [...held.carried, { season, cropId: crop.id }];
  const known = new Set(brokenIn(problem, held, []).map((each) => JSON.stringify(each)));
  return brokenIn(problem, { ...held, carried, closed: [] }, []).filter((each) => !known.has(JSON.stringify(each)));
}

function lastingBreaks(
  { id, lasting }: RotationProblem['beds'][number],
  season: number,
  crop: Vegetable,
): BrokenRule[] {
  const stays = vegetables.find((each) => each.id === lasting);
  if (stays === undefined) return [];
  const saw = { crop: crop.name.toLowerCase(), lasting: stays.name.toLowerCase() };
  const reason = { rule: 'rotation-plan.lasting', saw, source: "the garden's own plan" } as const;
  return [{ bedId: id, season, cropId: crop.id, how: 'settled', reason }];
}

/** A disease found in the bed that keeps the crop out on the day it would go in. */
function sickness({ garden, today }: PracticeInput, { bed, season }: Spot, crop: Vegetable, day = today): BrokenRule[] {
  const lock = cropLockOut(garden, bed.id, crop, latestOf(today, day));
  if (lock === undefined) return [];
  return [{ bedId: bed.id, season, cropId: crop.id, how: 'settled', reason: sickReason(crop, lock) }];
}

function daysOf(input: PracticeInput, { bed, season }: Spot, crop: Vegetable): CropDays | undefined {
  const window = growing(input, crop, season);
  const soonest = latestOf(input.today, thereFrom(bed) ?? input.today);
  if (window === undefined || window.latest < soonest) return undefined;
  const { latest, how } = window;
  const earliest = latestOf(window.earliest, soonest);
  const [placed] = withDates(input, [{ bedId: bed.id, season, cropId: crop.id, areaM2: 0 }]);
  const free = latestOf(placed?.start?.day ?? earliest, earliest);
  return { how, earliest, latest, day: bestDay(input, bed, { ...window, earliest }, free) };
}
