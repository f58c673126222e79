/**
 * The day that work is put on: nearest to the preferred one in a week with room, and there on a day with room, on one
 * trip with other work at its place.
 */
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../measures/days.ts';
import type { Load, WeekLoad } from './week-load.ts';
import { bestDay, type Household, type Span, unfitness } from './work-days.ts';

/** Weeks before its preferred day that work may be done to ease a week. House default: two months' look ahead. */
export const LOOK_AHEAD_WEEKS = 8;

/**
 * Days further from its preferred one that work may be put for the sake of a trip shared, or of a day with room. House
 * default: from one end of a weekend to the middle of the week.
 */
export const TRIP_DAYS = 3;

/**
 * The day of a span for work of one job: of the days that suit best, in a week with room where there is one, the nearest
 * to the preferred; from there up to {@link TRIP_DAYS} further for a day with room, and for shared trips.
 *
 * @param span with `from` no later than `to`
 */
export function chosenDay(
  span: Span & { preferred: Day },
  work: readonly Load[],
  load: WeekLoad,
  household: Household,
): Day {
  const tooEarly = addDays(span.preferred, -7 * LOOK_AHEAD_WEEKS);
  const isFull = (day: Day): boolean => day < tooEarly || load.isFullFor(day, work);
  const near = bestDay(span, household, isFull);
  const [ill, full] = [unfitness(near, household), isFull(near)];
  if (ill === 2) return near;
  const reach = apart(near, span.preferred) + TRIP_DAYS;
  const last = earliestOf(span.to, addDays(span.preferred, reach));
  let best = { day: near, rank: rankOf(near, span.preferred, work, load) };
  for (let day = latestOf(span.from, addDays(span.preferred, -reach)); day <= last; day = addDays(day, 1)) {
    if (unfitness(day, household) !== ill || isFull(day) !== full) continue;
    const rank = rankOf(day, span.preferred, work, load);
    if (comesBefore(rank, best.rank)) best = { day, rank };
  }
  return best.day;
}

/** What is held against a day, the weightiest first: that it is full, trips not shared, days from the preferred one. */
type Rank = readonly [full: number, unshared: number, days: number];

function rankOf(day: Day, preferred: Day, work: readonly Load[], load: WeekLoad): Rank {
  return [Number(load.isDayFullFor(day, work)), -load.tripsShared(day, work), apart(day, preferred)];
}

function comesBefore(a: Rank, b: Rank): boolean {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
}

function apart(a: Day, b: Day): number {
  return Math.abs(daysBetween(a, b));
}
