/**
 * What sets a pile back: each problem its log tells of, and how long it stood.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Pile, PileReading } from '../../garden/garden.ts';
import { AT_WORK_C } from '../../handbook/pile-heat.ts';
import { addDays, type Day, daysBetween, eachDay, earliestOf, latestOf } from '../../measures/days.ts';
import { heatedAgain, rests } from './pile-life.ts';
import { ANSWER, COLD_C, HEAT_UP_DAYS, LEAST_TURNS } from './turn.ts';

/** What can be amiss with a pile. Stalled: cold in working weather, though not yet turned often enough to be done. */
export type Trouble = 'dry' | 'wet' | 'sour' | 'slumped' | 'stalled' | 'ammonia' | 'pests';

/** A problem, from the look that found it to what ended it. */
export interface Setback {
  trouble: Trouble;
  on: Day;
  /** Its turn, or a look that found it well again; else the last day on which its answer is due. */
  until: Day;
}

/** Problems in which a pile all but stops: it lacks water, air or heat. With ammonia or pests it works on. House default. */
const STANDS_STILL: ReadonlySet<Trouble> = new Set(['dry', 'wet', 'sour', 'slumped', 'stalled']);

/**
 * Days a pile works on at least after what set it back was answered, or after it was found to heat again in its curing.
 * House default: two turns, three or four, six.
 */
export const WORKS_ON_DAYS = { low: 14, usual: 28, high: 42 } as const;

/** What each look found amiss. */
const SIGNS: Readonly<Record<Exclude<Trouble, 'stalled'>, (reading: PileReading) => boolean>> = {
  dry: ({ moisture }) => moisture === 'dry',
  wet: ({ moisture }) => moisture === 'wet',
  sour: ({ smell }) => smell === 'sour',
  ammonia: ({ smell }) => smell === 'ammonia',
  slumped: ({ slumped }) => slumped === true,
  pests: ({ pests }) => pests === true,
};

/** What tells that a problem is over, besides a turn. */
const WELL: Readonly<Record<Trouble, (reading: PileReading) => boolean>> = {
  dry: ({ moisture }) => moisture === 'damp',
  wet: ({ moisture }) => moisture === 'damp',
  sour: ({ smell }) => smell === 'earthy',
  ammonia: ({ smell }) => smell === 'earthy',
  slumped: (reading) => byHand(reading) && reading.slumped === undefined,
  pests: (reading) => byHand(reading) && reading.pests === undefined,
  stalled: ({ tempC }) => tempC !== undefined && tempC >= AT_WORK_C,
};

function byHand({ smell, moisture, pests, slumped }: PileReading): boolean {
  return (smell ?? moisture ?? pests ?? slumped) !== undefined;
}

/** Every problem of a pile's log, oldest look first. */
export function setbacksOf(pile: Pile, climate: Climate): Setback[] {
  return pile.readings.flatMap((reading) =>
    troublesIn(pile, reading, climate).map((trouble) => ({
      trouble,
      on: reading.on,
      until: endOf(pile, reading.on, trouble),
    })),
  );
}

function troublesIn(pile: Pile, reading: PileReading, climate: Climate): Trouble[] {
  const seen = (Object.keys(SIGNS) as (keyof typeof SIGNS)[]).filter((trouble) => SIGNS[trouble](reading));
  return isStalled(pile, reading, climate) ? [...seen, 'stalled'] : seen;
}

/** Cold in working weather, once it had its days to heat, before it was turned often enough to count as done. */
function isStalled({ built, turns, method }: Pile, { on, tempC }: PileReading, climate: Climate): boolean {
  if (method === 'cold' || tempC === undefined || tempC >= COLD_C) return false;
  const before = turns.filter((turned) => turned < on);
  const moved = latestOf(built.day, ...before);
  return before.length < LEAST_TURNS && daysBetween(moved, on) >= HEAT_UP_DAYS && !rests(climate, on);
}

function endOf({ turns, readings }: Pile, on: Day, trouble: Trouble): Day {
  const turned = turns.filter((day) => day >= on);
  const well = readings.filter((reading) => reading.on > on && WELL[trouble](reading)).map((reading) => reading.on);
  const [first, ...others] = [...turned, ...well];
  if (first !== undefined) return earliestOf(first, ...others);
  return addDays(on, ANSWER[trouble === 'stalled' ? 'cooling' : trouble].days);
}

/**
 * Days of working weather that a pile stood still, each counted once: they come on top of the days its method takes.
 */
export function stoodStillDays(setbacks: readonly Setback[], climate: Climate): number {
  const spans = setbacks.filter(({ trouble }) => STANDS_STILL.has(trouble));
  const still = new Set(spans.flatMap(({ on, until }) => eachDay(on, until).slice(1)));
  return [...still].filter((day) => !rests(climate, day)).length;
}

/** What sets the curing of a pile back: it lies still and shrinks anyway, and its dryness is only slow. */
const SPOILS_CURING: ReadonlySet<Trouble> = new Set(['wet', 'sour', 'ammonia', 'pests']);

/** The day from which a pile cures: it was moved for that, or turned since, or a problem or new heat was last over. */
export function curesFrom(pile: Pile, curingSince: Day, climate: Climate): Day {
  const troubles = setbacksOf(pile, climate).filter(
    ({ trouble, on }) => on > curingSince && SPOILS_CURING.has(trouble),
  );
  const hot = pile.readings.filter(({ on, tempC }) => on > curingSince && tempC !== undefined && tempC >= AT_WORK_C);
  return latestOf(curingSince, ...pile.turns, ...troubles.map(({ until }) => until), ...hot.map(({ on }) => on));
}

/** The day from which a pile works on once more: the newest answer to a problem, or look that found it heating again. */
export function worksOnFrom(pile: Pile, setbacks: readonly Setback[]): Day | undefined {
  return [...setbacks.map(({ until }) => until), ...heatedAgain(pile)].sort().at(-1);
}
