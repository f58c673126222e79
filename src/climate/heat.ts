/**
 * Degree-days: how much warmth above a base a plant has had, in °C·days.
 *
 * Sums counted by different methods are not the same thing: to 1 June at base 4.4 °C the raised mean gives half as
 * much again as the plain mean at Bozeman (docs/climate.md). Every sum goes with the method it was made for.
 */
import type { HeatMethod } from '../handbook/shapes/cover.ts';
import type { Day } from '../measures/days.ts';
import { airNorms } from './air.ts';
import { type Climate, DAYS_IN_SEASON, type SeasonTurn, type SeasonWeather } from './climate.ts';
import { countedOdds } from './counted-odds.ts';
import { dailySpreadC, expectedBetween } from './daily-spread.ts';
import { HEAT_DATE_SPREAD_DAYS } from './fitted.ts';
import { MISSING_DAYS_ALLOWED } from './freeze-record.ts';
import { holderOf, membersFor } from './members.ts';
import type { Odds } from './odds.ts';
import { deviationOf, meanOf, normalQuantile, normalShareBelow } from './quantiles.ts';
import { memory } from './remembered.ts';
import { dayOfIndex, seasonIndex, seasonOf } from './season.ts';
import { daysAt } from './season-weather.ts';
import { singleSineUnits } from './single-sine.ts';

/**
 * How heat is counted: the base, an optional upper limit above which more warmth does not count, and the method.
 * `mean-over-base` cuts the day's mean at the upper limit, `raised-to-base` its minimum and maximum. `small-grain` is
 * the North Dakota count for barley and spring wheat (phenology:P2), with a base of 0 °C and limits of its own.
 */
export interface HeatCount {
  method: HeatMethod;
  baseC: number;
  upperC?: number;
}

/** The small-grain count cuts the maximum at 70 °F until 384 °F units have come together, then at 95 °F (phenology:P2). */
const SMALL_GRAIN = { baseC: 0, youngUpperC: 21.1, youngUntilUnits: 213, upperC: 35 } as const;

/**
 * Degree-days of one day, °C·days (McMaster & Wilhelm 1997, methods 1 and 2, agro:S12; phenology:P2).
 *
 * @param unitsSoFar units of the days before, which only the small-grain count looks at
 */
export function heatUnits(
  { tminC, tmaxC }: { tminC: number; tmaxC: number },
  count: HeatCount,
  unitsSoFar = 0,
): number {
  const { method, baseC, upperC = Number.POSITIVE_INFINITY } = count;
  switch (method) {
    case 'mean-over-base':
      return Math.max(0, Math.min((tminC + tmaxC) / 2, upperC) - baseC);
    case 'raised-to-base':
      return (held(tminC, baseC, upperC) + held(tmaxC, baseC, upperC)) / 2 - baseC;
    case 'single-sine':
      return singleSineUnits(tminC, tmaxC, baseC, upperC);
    case 'small-grain': {
      const limitC = smallGrainUpperC(unitsSoFar);
      return (held(tminC, SMALL_GRAIN.baseC, limitC) + held(tmaxC, SMALL_GRAIN.baseC, limitC)) / 2;
    }
    case 'days-at-base':
      return (tminC + tmaxC) / 2 >= baseC ? 1 : 0;
    default:
      return method satisfies never;
  }
}

/** Upper limit of the small-grain count after so many units, °C. */
function smallGrainUpperC(unitsSoFar: number): number {
  return unitsSoFar < SMALL_GRAIN.youngUntilUnits ? SMALL_GRAIN.youngUpperC : SMALL_GRAIN.upperC;
}

function held(tempC: number, lowC: number, highC: number): number {
  return Math.min(Math.max(tempC, lowC), highC);
}

/** A sum to be reached, counted from a day on, that day included. */
export interface HeatTarget extends HeatCount {
  from: Day;
  sum: number;
  /** Heat that comes first, such as a seed's to come up: the sum is counted from the day after it was reached. */
  before?: HeatLeg;
}

/** A sum of degree-days in its own count. */
export interface HeatLeg extends HeatCount {
  sum: number;
}

function legsOf({ before, ...target }: HeatTarget): readonly HeatLeg[] {
  return before === undefined ? [target] : [before, target];
}

/** How far a count through its legs has come: the leg it is in, and the units of that. */
interface Progress {
  leg: number;
  sum: number;
}

/** The count a day later; past the last leg all is reached. */
function nextDay({ leg, sum }: Progress, units: number, legs: readonly HeatLeg[]): Progress {
  const reached = sum + units >= (legs[leg]?.sum ?? 0);
  return reached ? { leg: leg + 1, sum: 0 } : { leg, sum: sum + units };
}

/** The day a sum of degree-days is reached: its odds, its median, and its standard deviation over years in days. */
interface HeatDate {
  odds: Odds;
  medianDay?: Day;
  spreadDays: number;
}

/**
 * When a sum of degree-days is reached, counting from a day on. With a daily record each season is run from that month and day,
 * into the next season where need be, after the days that were logged since (see members.ts); a season with more than five days missing on the way is left out, and a missing
 * day counts as the one before it. Without a record the sum is made of the logged days and of expected units from monthly means, and the
 * spread is the measured one of {@link HEAT_DATE_SPREAD_DAYS}. A sum not reached within 365 days has no date.
 */
export function heatOdds(climate: Climate, target: HeatTarget): HeatDate {
  return climate.seasons.length > 0 ? oddsFromRecord(climate, target) : oddsFromNormals(climate, target);
}

function oddsFromRecord(climate: Climate, target: HeatTarget): HeatDate {
  const runs = heatRuns(climate, target);
  const offsets = runs.filter((offset) => offset !== 'never').sort((a, b) => a - b);
  const odds = countedOdds(offsets, runs.length, (offset) => dayAfter(climate, target.from, offset));
  return {
    odds,
    ...(odds.median === undefined ? {} : { medianDay: odds.median }),
    spreadDays: offsets.length > 1 ? deviationOf(offsets) : spreadWithoutRecord(climate, target.from, 0),
  };
}

/**
 * Days of season index from the first day to the one on which the sum is reached, one for each season of the record
 * that can tell, oldest first; `never` where a whole year does not do.
 */
export function heatRuns(climate: Climate, target: HeatTarget): readonly (number | 'never')[] {
  const planned = seasonOf(climate.seasonTurn, target.from);
  const { holder, season } = holderOf(climate, planned + 1);
  const key = legsOf(target).map(({ method, baseC, upperC, sum }) => `${method} ${baseC} ${upperC} ${sum}`);
  const start = seasonIndex(climate.seasonTurn, target.from);
  return runs(holder, `${season} ${start} ${key.join(' ')}`, () => {
    const after = new Map(membersFor(holder, planned + 1).map((member) => [member.season, member]));
    return membersFor(holder, planned)
      .map((member) => heatRun(climate.seasonTurn, [member, after.get(member.season + 1)], target))
      .filter((run) => run !== 'unknown');
  });
}

/** Many beds ask after the same sum from the same day. */
const runs = memory<Climate, string, readonly (number | 'never')[]>();

function heatRun(
  turn: SeasonTurn,
  [first, second]: readonly [SeasonWeather, SeasonWeather | undefined],
  target: HeatTarget,
): number | 'never' | 'unknown' {
  const start = seasonIndex(turn, target.from);
  const legs = legsOf(target);
  let at: Progress = { leg: 0, sum: 0 };
  let [missing, lastUnits] = [0, 0];
  for (let offset = 0; offset < DAYS_IN_SEASON; offset += 1) {
    const index = start + offset;
    const season = index > DAYS_IN_SEASON ? second : first;
    if (!season) return 'unknown';
    for (const { tminC, tmaxC } of daysAt(turn, season, ((index - 1) % DAYS_IN_SEASON) + 1)) {
      if (tminC === undefined || tmaxC === undefined) missing += 1;
      else lastUnits = heatUnits({ tminC, tmaxC }, legs[at.leg] ?? target, at.sum);
      at = nextDay(at, lastUnits, legs);
    }
    if (missing > MISSING_DAYS_ALLOWED) return 'unknown';
    if (at.leg >= legs.length) return offset;
  }
  return 'never';
}

function oddsFromNormals(climate: Climate, target: HeatTarget): HeatDate {
  const offset = expectedRun(climate, target);
  if (offset === undefined) return { odds: { shareOfYears: 0, years: 0 }, spreadDays: 0 };
  const spreadDays = spreadWithoutRecord(climate, target.from, offset);
  const reach = normalQuantile(0.9) * spreadDays;
  const medianDay = dayAfter(climate, target.from, offset);
  return {
    odds: {
      early: dayAfter(climate, target.from, offset - reach),
      median: medianDay,
      late: dayAfter(climate, target.from, offset + reach),
      shareOfYears: 1,
      years: 0,
    },
    medianDay,
    spreadDays,
  };
}

function expectedRun(climate: Climate, target: HeatTarget): number | undefined {
  const start = seasonIndex(climate.seasonTurn, target.from);
  const legs = legsOf(target);
  let at: Progress = { leg: 0, sum: 0 };
  for (let offset = 0; offset < DAYS_IN_SEASON; offset += 1) {
    const leg = legs[at.leg] ?? target;
    const units =
      loggedUnits(climate, target.from, offset, leg, at.sum) ??
      expectedUnitsOn(climate, ((start + offset - 1) % DAYS_IN_SEASON) + 1, leg, at.sum);
    at = nextDay(at, units, legs);
    if (at.leg >= legs.length) return offset;
  }
  return undefined;
}

/** Units of a day that was logged with both its temperatures. */
function loggedUnits(climate: Climate, from: Day, offset: number, target: HeatCount, sum: number): number | undefined {
  if (climate.logged.length === 0) return undefined;
  const day = dayAfter(climate, from, offset);
  const logged = climate.logged.find((row) => row.day === day);
  if (logged?.tminC === undefined || logged.tmaxC === undefined) return undefined;
  return heatUnits({ tminC: logged.tminC, tmaxC: logged.tmaxC }, target, sum);
}

/** Twenty-four places on the day's wave, −1 at its minimum and 1 at its maximum. */
const HOURS = Array.from({ length: 24 }, (_, hour) => Math.sin((2 * Math.PI * (hour + 0.5)) / 24));

function waveAt({ minC, maxC, meanC }: { minC: number; maxC: number; meanC: number }, wave: number): number {
  return meanC + (wave * (maxC - minC)) / 2;
}

/**
 * Units to be expected on a day from monthly means, when each day scatters normally about the usual one. For the raised
 * mean the minimum and the maximum are each expected on their own, which is exact for that method;
 * for the sine each hour of the day is.
 */
export function expectedUnitsOn(climate: Climate, index: number, count: HeatCount, unitsSoFar = 0): number {
  const norm = airNorms(climate)[index - 1];
  if (!norm) throw new RangeError(`No usual temperature at season index ${index}.`);
  const spread = dailySpreadC(index);
  const { method, baseC, upperC } = count;
  if (method === 'mean-over-base') return expectedBetween(norm.meanC, spread.mean, baseC, upperC);
  if (method === 'days-at-base') return 1 - normalShareBelow((baseC - norm.meanC) / spread.mean);
  if (method === 'single-sine') {
    return meanOf(HOURS.map((wave) => expectedBetween(waveAt(norm, wave), spread.mean, baseC, upperC)));
  }
  const low = method === 'small-grain' ? SMALL_GRAIN.baseC : baseC;
  const high = method === 'small-grain' ? smallGrainUpperC(unitsSoFar) : upperC;
  return (
    (expectedBetween(norm.minC, spread.minimum, low, high) + expectedBetween(norm.maxC, spread.maximum, low, high)) / 2
  );
}

function spreadWithoutRecord(climate: Climate, from: Day, offset: number): number {
  const start = seasonIndex(climate.seasonTurn, from);
  return start === 1 || start + offset > DAYS_IN_SEASON
    ? HEAT_DATE_SPREAD_DAYS.acrossMidwinter
    : HEAT_DATE_SPREAD_DAYS.withinSeason;
}

function dayAfter(climate: Climate, from: Day, offset: number): Day {
  const { seasonTurn } = climate;
  return dayOfIndex(seasonTurn, seasonOf(seasonTurn, from), seasonIndex(seasonTurn, from) + offset);
}
