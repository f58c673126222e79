/**
 * The days of a plan: when each crop is to go in, and when its last harvest is expected.
 */
import { memory } from '../../climate/remembered.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { cropSpans, cropYear, isPermanent } from '../../practices/bed-timeline.ts';
import { type StandSpan, standSpans } from '../../practices/cover-cropping/fit/stand-spans.ts';
import { coverParts, waitDaysOf } from '../../practices/covers.ts';
import type { How } from '../../practices/planting/first-day.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import type { Placement } from '../../practices/rotation-plan/problem.ts';
import { CLEAR_DAYS, type Growing, growing, grownFrom } from './growing.ts';

/**
 * A crop of a plan with its days; either is absent where the climate does not tell it, or it is too late in the season for
 * it, or, the last, a crop stays.
 */
export interface DatedPlacement extends Placement {
  /**
   * The first day it may go in: its own first good day, or when the bed is free, of a cover too where the crop can wait for
   * it; not before today.
   */
  start?: { how: How; day: Day };
  /** When its harvest is expected to be over. */
  lastHarvest?: Day;
}

/** A plan with its days, in the order of the plan. Seasons before decide when a bed is free. */
export function withDates(input: PracticeInput, placements: readonly Placement[]): DatedPlacement[] {
  const dated = new Map<Placement, DatedPlacement>();
  const isSecond = ({ after }: Placement) => Number(after !== undefined);
  for (const placement of [...placements].sort((a, b) => a.season - b.season || isSecond(a) - isSecond(b))) {
    dated.set(placement, datedIn(input, placement, [...dated.values()]));
  }
  return placements.map((placement) => dated.get(placement) ?? placement);
}

function datedIn(input: PracticeInput, placement: Placement, earlier: readonly DatedPlacement[]): DatedPlacement {
  const { bedId, season, cropId } = placement;
  const growth = growing(input, vegetableById(cropId), season);
  const soonest = notBefore(input, bedId);
  if (growth === undefined || growth.latest < soonest) return placement;
  const free = latestOf(freeFrom(input, placement, earlier) ?? soonest, afterFirst(placement, earlier) ?? soonest);
  if (placement.after !== undefined && free > growth.latest) return placement;
  const first = earliestOf(latestOf(growth.earliest, soonest, free), growth.latest);
  const day = afterCover(input, bedId, { ...growth, earliest: first }) ?? first;
  const { to } = grownFrom(input, growth, { bedId, day });
  return { ...placement, start: { how: growth.how, day }, ...(to === undefined ? {} : { lastHarvest: to }) };
}

/** Today, or the day the bed itself is to be there. */
function notBefore({ garden, today }: PracticeInput, bedId: string): Day {
  const bed = garden.beds.find(({ id }) => id === bedId);
  return latestOf(today, (bed && thereFrom(bed)) ?? today);
}

/** Held for as long as what they are worked out from: many crops may be asked for one bed. */
const spansOfBed = memory<PracticeInput, string, StandSpan[]>();

/**
 * The day a cover that stands in the bed is cut at its best and its residue has lain for as long as it should, where that lies
 * among a crop's days; nothing where none stands then, or the crop cannot wait for it.
 */
function afterCover(input: PracticeInput, bedId: string, growth: Growing): Day | undefined {
  const { crop, how, earliest, latest } = growth;
  const isTouchy = how === 'sow' && (crop.smallSeed || crop.seedcornMaggot);
  const days = spansOfBed(input, bedId, () => standSpans(input, bedId)).flatMap(({ stand, from, ends }) => {
    if (ends === undefined || from >= earliest) return [];
    const wait = waitDaysOf(coverParts(stand.coverId));
    const free = addDays(ends, isTouchy ? wait.smallSeed : wait.transplant);
    return free > earliest && free <= latest ? [free] : [];
  });
  const [first, ...others] = days;
  return first === undefined ? undefined : latestOf(first, ...others);
}

/** The day the ground is ready that a crop of the same season leaves to the next. */
function afterFirst({ bedId, season, after }: Placement, earlier: readonly DatedPlacement[]): Day | undefined {
  const first = earlier.find((each) => each.bedId === bedId && each.season === season && each.cropId === after);
  return first?.lastHarvest === undefined ? undefined : addDays(first.lastHarvest, CLEAR_DAYS);
}

/** The day after the last of the season before is out of the bed. */
function freeFrom(
  { garden, climate }: PracticeInput,
  { bedId, season }: Placement,
  earlier: readonly DatedPlacement[],
): Day | undefined {
  const carried = cropSpans(garden, bedId, climate)
    .filter((span) => !isPermanent(span.crop) && cropYear(span, climate) === season - 1)
    .flatMap(({ to }) => (to === undefined ? [] : [to]));
  const proposed = earlier
    .filter((place) => place.bedId === bedId && place.season === season - 1)
    .flatMap(({ lastHarvest }) => (lastHarvest === undefined ? [] : [lastHarvest]));
  const [first, ...others] = [...carried, ...proposed];
  return first === undefined ? undefined : addDays(latestOf(first, ...others), 1);
}
