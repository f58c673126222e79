/**
 * Dates, hours and standings as the pages write them.
 */
import { addDays, type Day, dayParts, weekdayOf } from '../measures/days.ts';
import { formatDay } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { Condition } from '../practices/draft.ts';
import type { PlannedTask, TaskState } from '../schedule/plan.ts';

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

export function weekdayName(day: Day): string {
  return WEEKDAYS[weekdayOf(day) - 1] ?? '';
}

/** "Monday 19 April", or "Monday, April 19" where inches are read. */
export function longDay(day: Day, units: UnitSystem): string {
  return `${weekdayName(day)}${units === 'us' ? ',' : ''} ${formatDay(day, units)}`;
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

/** Hours and minutes: "1:20". */
export function hoursMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** "today", "tomorrow", "in 5 days". */
export function daysAhead(days: number): string {
  if (days <= 0) return 'today';
  return days === 1 ? 'tomorrow' : `in ${days} days`;
}

/** Where a task stands, in a word or two. */
export function standing(task: Pick<PlannedTask, 'state' | 'ifMissed'>): string {
  if (task.state === 'lapsed') return task.ifMissed === 'still do' ? 'late' : 'missed';
  return STATE_WORDS[task.state];
}

const STATE_WORDS: Readonly<Record<Exclude<TaskState, 'lapsed'>, string>> = {
  open: 'open',
  done: 'done',
  skipped: 'skipped',
};

/** How well a date is known. */
export const CONFIDENCE_WORDS: Readonly<Record<PlannedTask['confidence'], string>> = {
  recorded: 'Recorded: it stands on days that were written down for this garden.',
  modelled: 'Modelled: worked out by a published rule, year by year, from measured weather.',
  derived: 'Derived: worked out by rule from published figures and the garden’s own plan.',
  assumed: 'Assumed: a figure nobody has measured here stands in. Trust what you see over the date.',
};

/** What must be so on the day. */
export const CONDITION_WORDS: Readonly<Record<Condition, string>> = {
  'soil-fit': 'soil dry enough to work',
  'dry-day': 'a dry day',
  'above-freezing': 'air above freezing',
  'before-sunset': 'be finished before sunset',
  'calm-day': 'a calm day',
};
