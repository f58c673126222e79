/**
 * Days, hours and standings as a weekly list writes them.
 */
import { addDays, type Day, dayParts, type Instant, type Weekday, weekdayOf } from '../measures/days.ts';
import { formatDay } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { Condition } from '../practices/draft.ts';
import type { PlannedTask } from '../schedule/plan.ts';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** "Monday". */
export function weekdayName(day: Day): string {
  return weekdayWord(weekdayOf(day));
}

/** "Monday", of a day of the week. */
export function weekdayWord(weekday: Weekday): string {
  return WEEKDAYS[weekday - 1] ?? '';
}

/**
 * "Monday 19 April", or "Monday, April 19" where inches are read.
 *
 * @param beside a day the reader has in mind: a day of another year is then written with its year
 */
export function longDay(day: Day, units: UnitSystem, beside: Day = day): string {
  return `${weekdayName(day)}${units === 'us' ? ',' : ''} ${formatDay(day, units, beside)}`;
}

/** A day with its year: "19 April 2027", "April 19, 2027". */
export function fullDay(day: Day, units: UnitSystem): string {
  return `${formatDay(day, units)}${units === 'us' ? ',' : ''} ${dayParts(day).year}`;
}

/** Seven days from a Monday: "19 to 25 April 2027", "December 28, 2026 to January 3, 2027". */
export function weekSpan(monday: Day, units: UnitSystem): string {
  const sunday = addDays(monday, 6);
  const [from, to] = [dayParts(monday), dayParts(sunday)];
  if (from.year !== to.year) return `${fullDay(monday, units)} to ${fullDay(sunday, units)}`;
  if (from.month !== to.month) return `${formatDay(monday, units)} to ${fullDay(sunday, units)}`;
  if (units === 'us') return `${formatDay(monday, units)} to ${to.dayOfMonth}, ${to.year}`;
  return `${from.dayOfMonth} to ${fullDay(sunday, units)}`;
}

/** Minutes as "20 min", "2 h" or "1 h 20 min". */
export function hoursText(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** Whose clock and units hours are written in. */
export interface LocalClock {
  timeZone: string;
  units: UnitSystem;
}

const MS_PER_MINUTE = 60_000;

/** When on its day a task is to be done: "before 18:40" where it must be finished by sunset, else "from 07:50". */
export function hourText({ at, needs }: Pick<PlannedTask, 'at' | 'needs'>, clock: LocalClock): string | undefined {
  if (at === undefined) return undefined;
  if (!needs.includes('before-sunset')) return `from ${clockTime(at.from, clock)}`;
  const end = new Date(new Date(at.from).valueOf() + at.minutes * MS_PER_MINUTE).toISOString();
  return `before ${clockTime(end, clock)}`;
}

/** A moment on the garden's own clock: "18:40", or "6:40 pm" where inches are read. */
export function clockTime(instant: Instant, { timeZone, units }: LocalClock): string {
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  const [hour = '', minute = ''] = clock.format(new Date(instant)).split(':');
  if (units === 'metric') return `${hour}:${minute}`;
  return `${Number(hour) % 12 || 12}:${minute} ${Number(hour) < 12 ? 'am' : 'pm'}`;
}

/** The day of a moment on a garden's own wall. */
export function dayAt(instant: Instant, timeZone: string): Day {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  return parts.format(new Date(instant));
}

/** "today", "tomorrow", "in 5 days". */
export function daysAhead(days: number): string {
  if (days <= 0) return 'today';
  return days === 1 ? 'tomorrow' : `in ${days} days`;
}

/** What must be so on the day. */
export const CONDITION_WORDS: Readonly<Record<Condition, string>> = {
  'soil-fit': 'soil dry enough to work',
  'dry-day': 'a dry day',
  'above-freezing': 'air above freezing',
  'before-sunset': 'to be finished before sunset',
  'calm-day': 'a calm day',
};
