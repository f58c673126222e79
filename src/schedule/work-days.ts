/**
 * Which days suit the household: work days at home first, then other days at home, days away last.
 */
import type { Away } from '../garden/garden.ts';
import { addDays, type Day, daysBetween, latestOf, type Weekday, weekdayOf } from '../measures/days.ts';

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
  if (isAway(day, away)) return 2;
  return workDays.includes(weekdayOf(day)) ? 0 : 1;
}

/** Whether nobody is there on a day. */
export function isAway(day: Day, away: readonly Away[]): boolean {
  return away.some(({ from, to }) => day >= from && day <= to);
}

/**
 * A span without the days away at its ends, so that what must come before or after it reckons with the days that are
 * there to work on. A span with nobody at home on any day stays as it is.
 */
export function homeSpan(span: Span, away: readonly Away[]): Span {
  let { from, to } = span;
  while (from <= to && isAway(from, away)) from = addDays(from, 1);
  while (to > from && isAway(to, away)) to = addDays(to, -1);
  return from <= to ? { from, to } : span;
}

/** Times away put together: those that meet or overlap are one. In the order of their first days. */
export function timesAway(away: readonly Away[]): Away[] {
  const joined: Away[] = [];
  for (const { from, to } of [...away].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    const before = joined.at(-1);
    if (before === undefined || from > addDays(before.to, 1)) joined.push({ from, to });
    else joined[joined.length - 1] = { from: before.from, to: latestOf(before.to, to) };
  }
  return joined;
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
 * day at home in a full week comes after those of the same fitness in other weeks.
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
    const unfit = unfitness(day, household);
    const ill = 2 * unfit + Number(unfit < 2 && isFull(day));
    const cost = ill * DAYS_OUTWEIGHED + Math.abs(daysBetween(day, preferred));
    if (cost < best.cost) best = { day, cost };
  }
  return best.day;
}
