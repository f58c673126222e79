/**
 * Seasons as the practices name them.
 */
import type { Climate } from '../climate/climate.ts';
import { seasonIndex, seasonOf } from '../climate/season.ts';
import type { Day } from '../measures/days.ts';

/** Season index of midsummer (1 July north, 31 December south). */
export const MIDSUMMER_INDEX = 182;

/** The season whose crops work done on a day prepares for: the running one until midsummer, the next after it. */
export function seasonAfter(climate: Climate, day: Day): number {
  const season = seasonOf(climate.seasonTurn, day);
  return seasonIndex(climate.seasonTurn, day) > MIDSUMMER_INDEX ? season + 1 : season;
}
