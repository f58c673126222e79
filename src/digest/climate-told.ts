/**
 * The climate of a garden figure by figure, each with how it was worked out and from what. Texts may hold marked amounts.
 */
import { airNorms } from '../climate/air.ts';
import { type Climate, DAYS_IN_SEASON, type FreezeEvent, type FreezeLimitF } from '../climate/climate.ts';
import { daylight } from '../climate/daylight.ts';
import { freezeOdds } from '../climate/freeze.ts';
import { seasonFreeze } from '../climate/freeze-record.ts';
import { usualHeatBetween } from '../climate/heat-left.ts';
import { usualOf } from '../climate/logged.ts';
import type { Odds } from '../climate/odds.ts';
import { meanOf, quantileType6 } from '../climate/quantiles.ts';
import { dayOfIndex, seasonOf } from '../climate/season.ts';
import { soilTempNormC, soilWarmOdds } from '../climate/soil-temperature.ts';
import { addDays, type Day, dayOf, dayParts, daysBetween, daysInMonth, eachDay } from '../measures/days.ts';

/** The freezes told: a light one, one that only hardy crops stand, and a hard one. */
export const FREEZES_TOLD: readonly FreezeLimitF[] = [32, 28, 24];

/** Warmth of the soil that sowing waits for: peas and onions, beet, beans and corn, squash and tomato. House default. */
const SOIL_STEPS_C: readonly number[] = [5, 10, 15, 18];

/** What heat is counted above in the table of months, °C: the base of warm-season crops (50 °F). */
export const HEAT_BASE_C = 10;

/** Light in which vegetables hardly grow on, hours: common practice. */
export const SHORT_DAY_HOURS = 10;

/** Odds as they usually are, and as this season's own weather has moved them, where it has. */
export interface FreezesTold {
  usual: Odds;
  now?: Odds;
}

/** A freeze of spring or autumn that is asked after. */
export interface FreezeAsked {
  event: FreezeEvent;
  limitF: FreezeLimitF;
  season: number;
}

/** The usual odds of a freeze; and those of this season, where its own weather has moved them. */
export function freezesTold(climate: Climate, ask: FreezeAsked): FreezesTold {
  const [usual, now] = [freezeOdds(usualOf(climate), ask), freezeOdds(climate, ask)];
  const same = usual.early === now.early && usual.median === now.median && usual.late === now.late;
  return same ? { usual } : { usual, now };
}

/** Days from the last freeze of spring to the first of autumn, that have none. */
export interface FreezeFree {
  /** In one, five and nine years of ten it is shorter than that. */
  short?: number;
  median?: number;
  long?: number;
  /** Seasons it was counted in; 0 where it is taken between two middle dates. */
  seasons: number;
}

/** The season without a night at or below 32 °F. */
export function freezeFree(climate: Climate, season: number): FreezeFree {
  const usual = usualOf(climate);
  const counted = usual.seasons.flatMap((each) => {
    const spring = seasonFreeze(usual.seasonTurn, each, 'last-spring', 32);
    const autumn = seasonFreeze(usual.seasonTurn, each, 'first-autumn', 32);
    if (typeof spring !== 'number' || typeof autumn !== 'number') return [];
    return [Math.max(0, autumn - spring - 1 - 2 * usual.frostOffsetDays)];
  });
  if (counted.length > 0) {
    const sorted = counted.sort((a, b) => a - b);
    const at = (share: number): number => Math.round(quantileType6(sorted, share));
    return { short: at(0.1), median: at(0.5), long: at(0.9), seasons: sorted.length };
  }
  const [spring, autumn] = (['last-spring', 'first-autumn'] as const).map(
    (event) => freezeOdds(usual, { event, limitF: 32, season }).median,
  );
  if (spring === undefined || autumn === undefined) return { seasons: 0 };
  return { median: daysBetween(spring, autumn) - 1, seasons: 0 };
}

/** The day from which the soil holds a warmth. */
export interface SoilStep {
  tempC: number;
  odds: Odds;
}

/** When the soil has come to each step of warmth in a season. */
export function soilSteps(climate: Climate, season: number): SoilStep[] {
  return SOIL_STEPS_C.map((tempC) => ({ tempC, odds: soilWarmOdds(usualOf(climate), { season, tempC }) }));
}

/** A month of the usual year. */
export interface MonthTold {
  first: Day;
  highC: number;
  lowC: number;
  soilC: number;
  /** Absent where rain is not known. */
  rainMm?: number;
  /** From sunrise to sunset on its 21st. */
  lightHours: number;
  /** Heat above {@link HEAT_BASE_C} that comes together in it. */
  heat: number;
}

/** The twelve months of a season, in its own order. */
export function monthsTold(climate: Climate, season: number): MonthTold[] {
  const air = airNorms(climate);
  const begins = dayOfIndex(climate.seasonTurn, season, 1);
  return Array.from({ length: 12 }, (_, count) => {
    const { year, month } = dayParts(begins);
    const first = dayOf(year + Math.floor((month - 1 + count) / 12), ((month - 1 + count) % 12) + 1, 1);
    return monthOf(climate, air, begins, first);
  });
}

function monthOf(climate: Climate, air: ReturnType<typeof airNorms>, begins: Day, first: Day): MonthTold {
  const { latitude, longitude, normals } = climate;
  const { year, month } = dayParts(first);
  const last = dayOf(year, month, daysInMonth(year, month));
  const days = eachDay(first, last);
  const ofAir = days.flatMap((day) => air[Math.min(daysBetween(begins, day), DAYS_IN_SEASON - 1)] ?? []);
  const rainMm = normals.rainMm?.[month - 1];
  return {
    first,
    highC: meanOf(ofAir.map(({ maxC }) => maxC)),
    lowC: meanOf(ofAir.map(({ minC }) => minC)),
    soilC: meanOf(days.map((day) => soilTempNormC(climate, day))),
    ...(rainMm === undefined ? {} : { rainMm }),
    lightHours: daylight(latitude, longitude, dayOf(year, month, 21)).hours,
    heat: usualHeatBetween(climate, [first, addDays(last, 1)], { method: 'mean-over-base', baseC: HEAT_BASE_C }),
  };
}

/** Heat usually had between the middle freeze dates; nothing where they are not known. */
export function heatOfSeason(climate: Climate, season: number): number | undefined {
  const [spring, autumn] = (['last-spring', 'first-autumn'] as const).map(
    (event) => freezeOdds(usualOf(climate), { event, limitF: 32, season }).median,
  );
  if (spring === undefined || autumn === undefined) return undefined;
  return usualHeatBetween(climate, [spring, autumn], { method: 'mean-over-base', baseC: HEAT_BASE_C });
}

/** Light through the year at a place. */
export interface LightTold {
  longest: { day: Day; hours: number };
  shortest: { day: Day; hours: number };
  /** The days from which it is shorter, and again as long, as {@link SHORT_DAY_HOURS}; absent where it never is. */
  shortFrom?: Day;
  shortTo?: Day;
}

/** The longest and the shortest day from a day on, within a year, and when days are short. */
export function lightTold({ latitude, longitude }: Climate, today: Day): LightTold {
  const days = eachDay(today, addDays(today, DAYS_IN_SEASON)).map((day) => ({
    day,
    hours: daylight(latitude, longitude, day).hours,
  }));
  const ordered = [...days].sort((a, b) => a.hours - b.hours);
  const turned = (isShort: boolean): Day | undefined =>
    days.find(
      ({ hours }, at) =>
        at > 0 && hours < SHORT_DAY_HOURS === isShort && (days[at - 1]?.hours ?? 0) < SHORT_DAY_HOURS !== isShort,
    )?.day;
  const [shortFrom, shortTo] = [turned(true), turned(false)];
  const nothing = { day: today, hours: 0 };
  return {
    longest: ordered.at(-1) ?? nothing,
    shortest: ordered[0] ?? nothing,
    ...(shortFrom === undefined ? {} : { shortFrom }),
    ...(shortTo === undefined ? {} : { shortTo }),
  };
}

/** The season a climate is told for: the running one. */
export function seasonTold(climate: Climate, today: Day): number {
  return seasonOf(climate.seasonTurn, today);
}
