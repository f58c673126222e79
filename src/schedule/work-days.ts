/**
 * Which days suit the household: work days at home first, then other days at home, days away last.
 */
import type { Away } from '../garden/garden.ts';
import { addDays, type Day, daysBetween, type Weekday, weekdayOf } from '../measures/days.ts';

/** When the household works and when nobody is there. */
export interface Household {
  workDays: readonly Weekday[];
  away: readonly Away[];
}

/** A span of days, both ends included. */
export interface Span {
  from: Day;
  to: Day;
}

/** How ill a day suits: 0 a work day at home, 1 another day at home, 2 a day away. */
export type Unfitness = 0 | 1 | 2;

/** More than any two days of a span lie apart: a day that suits better wins however far it is. */
const DAYS_OUTWEIGHED = 1_000_000;

/** How ill a day suits the household. */
export function unfitness(day: Day, { workDays, away }: Household): Unfitness {
  if (away.some(({ from, to }) => day >= from && day <= to)) return 2;
  return workDays.includes(weekdayOf(day)) ? 0 : 1;
}

/** How ill the best day of a span suits; 2 for a span without days. */
export function leastUnfitness({ from, to }: Span, household: Household): Unfitness {
  let least: Unfitness = 2;
  for (let day = from; day <= to && least > 0; day = addDays(day, 1)) {
    const here = unfitness(day, household);
    if (here < least) least = here;
  }
  return least;
}

/**
 * The best day of a span: of the days that suit best the one nearest to a preferred day, the earlier of two as near. A
 * day of a full week comes after those of the same fitness in other weeks.
 *
 * @param span with `from` no later than `to`
 */
export function bestDay(
  { from, to, preferred }: Span & { preferred: Day },
  household: Household,
  isFull: (day: Day) => boolean,
): Day {
  let best = { day: from, cost: Number.POSITIVE_INFINITY };
  for (let day = from; day <= to; day = addDays(day, 1)) {
    const ill = 2 * unfitness(day, household) + Number(isFull(day));
    const cost = ill * DAYS_OUTWEIGHED + Math.abs(daysBetween(day, preferred));
    if (cost < best.cost) best = { day, cost };
  }
  return best.day;
}
