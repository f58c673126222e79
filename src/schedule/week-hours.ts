/**
 * The hours a household keeps for the garden, week by week: those of its work days on which somebody is at home.
 */
import { addDays, type Day, eachDay, weekdayOf, weekStart } from '../measures/days.ts';
import { type Household, isAway } from './work-days.ts';

/** A household, and the hours it keeps for the garden in a week at home. */
export interface Hours extends Household {
  hoursPerWeek: number;
}

/** Minutes kept for the garden in the week of a day: the share of its work days at home. Nothing in a week away. */
export function givenMinutes(day: Day, hours: Hours): number {
  const days = workDaysOf(day, hours);
  return Math.round((hours.hoursPerWeek * 60 * homeDaysOf(day, hours).length) / days.length);
}

/** Minutes that fall to one work day at home in the week of a day; all of the week's where it has no such day. */
export function dayShareMinutes(day: Day, hours: Hours): number {
  return givenMinutes(day, hours) / Math.max(1, homeDaysOf(day, hours).length);
}

/** Minutes of the week of today that fall to its work days at home from today on. */
export function leftMinutes(today: Day, hours: Hours): number {
  const left = homeDaysOf(today, hours).filter((day) => day >= today);
  return Math.round(left.length * dayShareMinutes(today, hours));
}

/** The work days of a week; every day of it where a household names none. */
function workDaysOf(day: Day, { workDays }: Hours): Day[] {
  const monday = weekStart(day);
  const week = eachDay(monday, addDays(monday, 6));
  return workDays.length === 0 ? week : week.filter((each) => workDays.includes(weekdayOf(each)));
}

function homeDaysOf(day: Day, hours: Hours): Day[] {
  return workDaysOf(day, hours).filter((each) => !isAway(each, hours.away));
}
