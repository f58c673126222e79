/**
 * The paper the year is drawn on: one width for every row, so that a day lies at the same place in all of them.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import { addDays, type Day, eachDay, weekdayOf } from '../../measures/days.ts';
import { rounded } from './lines.ts';
import { dayScale, monthStarts } from './scales.ts';

/** Width of a row. In print a hundredth of an inch more than one; beside the bed names it fills Letter and A4 laid across. */
export const ROW_WIDTH = 864;

/** Where a day begins. The end of a last day is where the next begins. */
export function yearPlace({ from, to }: DaySpan): (day: Day) => number {
  const place = dayScale({ from, to: addDays(to, 1) }, { from: 0, to: ROW_WIDTH });
  return (day) => rounded(place(day));
}

/** The most days that are drawn with weeks at the foot: a season. Over more there are months only. */
const WEEKS_UP_TO_DAYS = 100;

/** Whether a stretch is drawn close up. */
export function isCloseUp(span: DaySpan): boolean {
  return span.to <= addDays(span.from, WEEKS_UP_TO_DAYS);
}

/** The Mondays of a stretch. */
export function mondays({ from, to }: DaySpan): Day[] {
  return eachDay(from, to).filter((day) => weekdayOf(day) === 1);
}

/** The lines that run down through all rows: months, and weeks close up. */
export function rulesOf(span: DaySpan): { months: readonly Day[]; weeks: readonly Day[] } {
  return { months: monthStarts(span.from, span.to), weeks: isCloseUp(span) ? mondays(span) : [] };
}

/** Width that text takes, with a little to spare: a letter of the serif at ten pixels is about half as wide. */
export function textWidth(text: string): number {
  return 5 * text.length;
}
