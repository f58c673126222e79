/**
 * Where a day stands in its season: the frame every climate date is counted in (see climate.ts).
 */
import { addDays, type Day, dayParts, daysBetween, inYear, monthDayOf } from '../measures/days.ts';
import { DAYS_IN_SEASON, type SeasonTurn } from './climate.ts';

/** Any year without a 29 February: the calendar that indices are counted on. */
const PLAIN_YEAR = 2001;

/** Days from 1 January to 30 June, and from 1 July to 31 December, of a plain year. */
const DAYS_BEFORE_JULY = 181;
const DAYS_FROM_JULY = 184;

/** The first day of the seasons of a place: 1 January from the equator north, 1 July south of it. */
export function seasonTurnOf(latitude: number): SeasonTurn {
  return latitude < 0 ? '07-01' : '01-01';
}

/** The season a day belongs to, named by the calendar year it starts in. */
export function seasonOf(turn: SeasonTurn, day: Day): number {
  const { year, month } = dayParts(day);
  return turn === '01-01' || month >= 7 ? year : year - 1;
}

/** Index of a day in its season, 1–365; 29 February has the index of the 28th. */
export function seasonIndex(turn: SeasonTurn, day: Day): number {
  const ofYear = daysBetween(`${PLAIN_YEAR}-01-01`, inYear(monthDayOf(day), PLAIN_YEAR)) + 1;
  if (turn === '01-01') return ofYear;
  return ofYear > DAYS_BEFORE_JULY ? ofYear - DAYS_BEFORE_JULY : ofYear + DAYS_FROM_JULY;
}

/** A half made by arithmetic may sit a hair below itself: rounded up all the same. */
const ROUNDING_SLACK = 1e-6;

/**
 * The day at an index of a season. Fractions round half up; an index below 1 or above 365 falls in a neighbouring
 * season. Never gives a 29 February.
 */
export function dayOfIndex(turn: SeasonTurn, season: number, index: number): Day {
  const whole = Math.floor(index + 0.5 + ROUNDING_SLACK);
  const seasonsOn = Math.floor((whole - 1) / DAYS_IN_SEASON);
  const within = whole - seasonsOn * DAYS_IN_SEASON;
  const ofYear = calendarIndex(turn, within);
  const year = season + seasonsOn + (turn === '07-01' && within > DAYS_FROM_JULY ? 1 : 0);
  return inYear(monthDayOf(addDays(`${PLAIN_YEAR}-01-01`, ofYear - 1)), year);
}

/** Day of the calendar year, 1–365 from 1 January, at an index of 1–365 of a season. */
export function calendarIndex(turn: SeasonTurn, index: number): number {
  if (turn === '01-01') return index;
  return index > DAYS_FROM_JULY ? index - DAYS_FROM_JULY : index + DAYS_BEFORE_JULY;
}
