/**
 * The eighteen months a year sheet shows: six whole seasons, each of three months, with a month or more before today.
 */

import type { SeasonTurn } from '../climate/climate.ts';
import type { DaySpan } from '../climate/season-course.ts';
import { capital } from '../measures/capital.ts';
import { addDays, type Day, dayOf, dayParts } from '../measures/days.ts';

/** Days that are always seen before today. House default: the last month's work, so that it is told where one stands. */
const SEEN_BACK_DAYS = 30;
const SEASONS = 6;
const MONTHS_IN_SEASON = 3;
const MONTHS = 12;

/** A season of three whole months, as weather services count them: spring is March to May north, September to November south. */
export interface YearSeason extends DaySpan {
  /** Its part of an address: "winter-2026", by the year it begins in. */
  word: string;
  /** "Winter 2026/27". */
  name: string;
}

const NAMES: Readonly<Record<SeasonTurn, Readonly<Record<number, string>>>> = {
  '01-01': { 3: 'spring', 6: 'summer', 9: 'autumn', 12: 'winter' },
  '07-01': { 3: 'autumn', 6: 'winter', 9: 'spring', 12: 'summer' },
};

/** The six seasons shown, from that in which the day thirty days ago lies. */
export function yearSeasons(turn: SeasonTurn, today: Day): YearSeason[] {
  const first = seasonBegin(addDays(today, -SEEN_BACK_DAYS));
  return Array.from({ length: SEASONS }, (_, i) => {
    const from = monthsLater(first, i * MONTHS_IN_SEASON);
    const { year, month } = dayParts(from);
    const name = NAMES[turn][month] ?? '';
    const years = month === MONTHS ? `${year}/${String((year + 1) % 100).padStart(2, '0')}` : String(year);
    const to = addDays(monthsLater(from, MONTHS_IN_SEASON), -1);
    return { word: `${name}-${year}`, name: `${capital(name)} ${years}`, from, to };
  });
}

/** First and last day of the eighteen months. */
export function yearSpan(today: Day): DaySpan {
  const from = seasonBegin(addDays(today, -SEEN_BACK_DAYS));
  return { from, to: addDays(monthsLater(from, SEASONS * MONTHS_IN_SEASON), -1) };
}

/** The first of the March, June, September or December at or before a day. */
function seasonBegin(day: Day): Day {
  const { year, month } = dayParts(day);
  return monthsLater(dayOf(year, month, 1), -(month % MONTHS_IN_SEASON));
}

function monthsLater(first: Day, months: number): Day {
  const { year, month } = dayParts(first);
  const count = year * MONTHS + month - 1 + months;
  return dayOf(Math.floor(count / MONTHS), (count % MONTHS) + 1, 1);
}
