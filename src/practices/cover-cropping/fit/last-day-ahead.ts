/**
 * How far ahead covers are thought of.
 */
import { addDays, type Day } from '../../../measures/days.ts';

/** How far ahead gaps are looked for and chosen for, days: two years. House default. */
const AHEAD_DAYS = 731;

/** The last day that anything can be chosen for. */
export function lastDayAhead(today: Day): Day {
  return addDays(today, AHEAD_DAYS);
}
