/**
 * Seasons as the practices name them.
 */
import type { Climate } from '../climate/climate.ts';
import { dayOfIndex, seasonIndex, seasonOf } from '../climate/season.ts';
import { soilWarmOdds } from '../climate/soil-temperature.ts';
import type { Bed } from '../garden/garden.ts';
import { thereFrom } from '../garden/planned-beds.ts';
import type { Day } from '../measures/days.ts';

/** Season index of midsummer (1 July north, 29 December south): what is sown later is sown for autumn. */
const MIDSUMMER_INDEX = 182;

/** Soil temperature at which beds wake in spring: the minimum of peas, the first crop in (veg:V2). House default. */
export const SOIL_AWAKE_C = 4.4;

/** The season whose crops work done on a day prepares for: the running one until midsummer, the next after it. */
export function seasonAfter(climate: Climate, day: Day): number {
  const season = seasonOf(climate.seasonTurn, day);
  return isAfterMidsummer(climate, day) ? season + 1 : season;
}

/** The first season whose crops a bed can hold; nothing for one that always was there. */
export function firstSeasonOf(climate: Climate, bed: Pick<Bed, 'plannedFor' | 'filledOn'>): number | undefined {
  const there = thereFrom(bed);
  return there === undefined ? undefined : seasonAfter(climate, there);
}

/** The season all is known of a new bed since: nothing grew where there was none. */
export const NOTHING_BEFORE = 0;

/** Whether a day lies in the second half of its season. */
export function isAfterMidsummer(climate: Climate, day: Day): boolean {
  return seasonIndex(climate.seasonTurn, day) > MIDSUMMER_INDEX;
}

/** The middle of the winter after a day: the first day of the next season. */
export function midwinterAfter(climate: Climate, day: Day): Day {
  return dayOfIndex(climate.seasonTurn, seasonOf(climate.seasonTurn, day) + 1, 1);
}

/** The middle of the winter that a day follows: the first day of its own season. */
export function midwinterBefore(climate: Climate, day: Day): Day {
  return dayOfIndex(climate.seasonTurn, seasonOf(climate.seasonTurn, day), 1);
}

/** Whether a day is the first of its season: what is reckoned to come then was there before. */
export function isMidwinter(climate: Climate, day: Day): boolean {
  return seasonIndex(climate.seasonTurn, day) === 1;
}

/** Midsummer of a season. */
export function midsummerOf(climate: Climate, season: number): Day {
  return dayOfIndex(climate.seasonTurn, season, MIDSUMMER_INDEX);
}

/** The median day of spring on which the soil wakes; nothing where it never does. */
export function soilAwake(climate: Climate, season: number): Day | undefined {
  return soilWarmOdds(climate, { season, tempC: SOIL_AWAKE_C }).median;
}

/** Every season whose work may fall between two days, with one to spare at either end, oldest first. */
export function seasonsAround(climate: Climate, from: Day, to: Day): number[] {
  const [first, last] = [seasonOf(climate.seasonTurn, from) - 1, seasonOf(climate.seasonTurn, to) + 1];
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** A season as a gardener calls it: "2027", or "2027/28" where it runs over the New Year. */
export function seasonName(climate: Pick<Climate, 'seasonTurn'>, season: number): string {
  if (climate.seasonTurn === '01-01') return String(season);
  return `${season}/${String((season + 1) % 100).padStart(2, '0')}`;
}
