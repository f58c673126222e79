/**
 * A year's smooth course drawn through twelve monthly means, with straight lines between the middles of months.
 *
 * Straight lines cut the tops and bottoms a little: on the Milwaukee and Bozeman records the heat of a spring
 * differs by at most 11 units from a smooth curve (docs/climate.md).
 */
import { addDays, daysInMonth } from '../measures/days.ts';
import { DAYS_IN_SEASON, type SeasonTurn } from './climate.ts';
import { calendarIndex, seasonIndex } from './season.ts';

const MONTHS = 12;

/** Day of a plain year on which each month has its middle: 16 January is 16, the middle of February 45.5. */
const MID_MONTHS: readonly number[] = Array.from({ length: MONTHS }, (_, i) => {
  const before = Array.from({ length: i }, (_month, m) => daysInMonth(2001, m + 1)).reduce(
    (sum, days) => sum + days,
    0,
  );
  return before + (daysInMonth(2001, i + 1) + 1) / 2;
});

/** Season index of each month's middle, January first. */
export function midMonthIndices(turn: SeasonTurn): number[] {
  return MID_MONTHS.map((day) => seasonIndex(turn, addDays('2001-01-01', Math.floor(day) - 1)) + (day % 1));
}

/**
 * Value of the course at an index of a season.
 *
 * @param monthly twelve means, January first
 */
export function courseAt(monthly: readonly number[], turn: SeasonTurn, index: number): number {
  const day = calendarIndex(turn, index);
  const after = MID_MONTHS.findIndex((middle) => middle > day);
  const next = after === -1 ? 0 : after;
  const last = (next + MONTHS - 1) % MONTHS;
  const from = MID_MONTHS[last] ?? 0;
  const gap = ((MID_MONTHS[next] ?? 0) - from + DAYS_IN_SEASON) % DAYS_IN_SEASON;
  const share = ((day - from + DAYS_IN_SEASON) % DAYS_IN_SEASON) / gap;
  return (monthly[last] ?? Number.NaN) * (1 - share) + (monthly[next] ?? Number.NaN) * share;
}

/** The whole course, by season index − 1. */
export function courseOf(monthly: readonly number[], turn: SeasonTurn): number[] {
  return Array.from({ length: DAYS_IN_SEASON }, (_, i) => courseAt(monthly, turn, i + 1));
}
