/**
 * Days of the week as a garden file names them.
 */
import type { Weekday } from '../measures/days.ts';

/** Monday first. */
export const WEEKDAY_NAMES = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

/** A day of the week in a garden file. */
export type WeekdayName = (typeof WEEKDAY_NAMES)[number];

/** The day of the week that a name stands for. */
export function weekdayNamed(name: WeekdayName): Weekday {
  return (WEEKDAY_NAMES.indexOf(name) + 1) as Weekday;
}

/** A day of the week by its name. */
export function nameOfWeekday(weekday: Weekday): WeekdayName {
  return WEEKDAY_NAMES[weekday - 1] ?? 'mon';
}
