/**
 * Whether a pile's log shows that it was hot long enough to kill germs.
 */
import type { Bin, Pile, PileReading } from '../../garden/garden.ts';
import { type Day, daysBetween } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { mixOf } from './mix/mix.ts';
import { builtLitres, HEATS_FROM_LITRES, portionsOf } from './pile-life.ts';

/** The rule for turned piles: so many days at or above a temperature, with so many turns (compost:S22, compost:S23). */
export const HOT_RECORD = { days: 15, turns: 5, fromC: 55, toC: 76.7 } as const;

/** Carbon to nitrogen at which the rule for certified farms wants a pile begun (compost:S23). */
export const RECORD_RATIO = { low: 25, high: 40 } as const;

/** Hours on end at that heat that are enough in a closed or aerated vessel: three days (compost:S22, compost:S23). */
export const CLOSED_RECORD_HOURS = 72;

/**
 * Longest time between two hot readings that is taken to have been hot throughout, hours. House default: about a day;
 * a pile read less often is credited with nothing between.
 */
export const COUNTED_GAP_HOURS = 30;

/** The hour a reading without one is taken at. House default. */
const UNTIMED = '12:00';

/** What a pile's log shows of its heat. */
export interface HotRecord {
  /** Logged days in the heat that counts, on which no reading was below it. */
  days: number;
  /** Turns from the first of them to the last. */
  turns: number;
  /** Hours between hot readings, as far as they are counted; and the longest run of them. */
  hours: number;
  longestHours: number;
  /** The rule its heat meets, where it meets one: enough for what is no manure (compost:S22). */
  heat?: 'turned' | 'closed';
  /** Why heat makes no record of it for manure, whatever its log says, inside a sentence; absent where it can. */
  unfit?: string;
  /** The rule it meets with manure in it: its heat, and begun large enough and at the ratio the rule asks (compost:S23). */
  passed?: 'turned' | 'closed';
}

/**
 * A pile's record of heat. A closed bin is held to the three-day rule too, where it is large enough to heat through by
 * itself: small ones seldom do (compost:S7). Nor does a thermometer in the middle of a small heap tell of its outside.
 */
export function hotRecord(pile: Pile, bin?: Bin): HotRecord {
  const read = pile.readings.filter(({ on, tempC }) => on >= pile.built.day && tempC !== undefined);
  const days = [...new Set(read.map(({ on }) => on))]
    .filter((day) => read.filter(({ on }) => on === day).every(isHot))
    .sort();
  const turns = turnsWithin(pile, days[0], days.at(-1));
  const runs = hotRuns(read);
  const longestHours = Math.max(0, ...runs);
  const closed = bin?.closed === true && bin.volumeL >= HEATS_FROM_LITRES && longestHours >= CLOSED_RECORD_HOURS;
  const turned = days.length >= HOT_RECORD.days && turns >= HOT_RECORD.turns;
  const heat = turned ? 'turned' : closed ? 'closed' : undefined;
  const unfit = unfitWords(pile);
  return {
    days: days.length,
    turns,
    hours: runs.reduce((sum, hours) => sum + hours, 0),
    longestHours,
    ...(heat === undefined ? {} : { heat }),
    ...(unfit === undefined ? {} : { unfit }),
    ...(heat === undefined || unfit !== undefined ? {} : { passed: heat }),
  };
}

/** What of a pile as it was built fails the rule, inside a sentence. What nobody wrote down fails it too. */
function unfitWords(pile: Pile): string | undefined {
  const litres = builtLitres(pile);
  const ratio = mixOf(portionsOf(pile)).carbonToNitrogen?.usual;
  const { low, high } = RECORD_RATIO;
  if (litres === 0) return 'nobody wrote down what it was built of';
  const small =
    `it was built of ${quantity(litres, 'L')}, and below ${quantity(HEATS_FROM_LITRES, 'L')} a heap may not heat ` +
    'through to its outside';
  const outside =
    ratio === undefined
      ? 'the ratio of carbon to nitrogen it was begun at is not known'
      : `it was begun at about ${inWhole(ratio)} of carbon to 1 of nitrogen, and the rule asks ${low} to ${high}`;
  const fails = [
    ...(litres < HEATS_FROM_LITRES ? [small] : []),
    ...(ratio !== undefined && ratio >= low && ratio <= high ? [] : [outside]),
  ];
  return fails.length === 0 ? undefined : fails.join('; and ');
}

/** A ratio in whole numbers, or with a tenth where rounding would bring it inside what it fails. */
function inWhole(ratio: number): string {
  const whole = Math.round(ratio);
  const { low, high } = RECORD_RATIO;
  return whole >= low && whole <= high ? ratio.toFixed(1) : String(whole);
}

function isHot({ tempC = 0 }: PileReading): boolean {
  return tempC >= HOT_RECORD.fromC && tempC <= HOT_RECORD.toC;
}

function turnsWithin({ turns }: Pile, first: Day | undefined, last: Day | undefined): number {
  return turns.filter((on) => first !== undefined && last !== undefined && on >= first && on <= last).length;
}

/** Hours of each unbroken run of hot readings no further apart than is counted. */
function hotRuns(read: readonly PileReading[]): number[] {
  const first = read[0]?.on;
  if (first === undefined) return [];
  const hourOf = ({ on, at = UNTIMED }: PileReading): number =>
    24 * daysBetween(first, on) + Number(at.slice(0, 2)) + Number(at.slice(3)) / 60;
  const hours = [...new Set(read.map(hourOf))].sort((a, b) => a - b);
  const hot = new Map(hours.map((hour) => [hour, read.filter((each) => hourOf(each) === hour).every(isHot)]));
  const runs: number[] = [];
  let run = 0;
  hours.forEach((hour, at) => {
    const before = hours[at - 1];
    const gap = before !== undefined && hot.get(before) && hot.get(hour) ? hour - before : Number.POSITIVE_INFINITY;
    if (gap <= COUNTED_GAP_HOURS) run += gap;
    else {
      runs.push(run);
      run = 0;
    }
  });
  return [...runs, run];
}
