/**
 * Logs in the order things happened.
 */
import type { Day } from '../measures/days.ts';

/** Items by their day, oldest first; those of one day stay in the order they were told. */
export function oldestFirst<Item>(items: readonly Item[], dayOf: (item: Item) => Day): Item[] {
  return [...items].sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : 0));
}

/** The day of an item that says when it was. */
export function onOf({ on }: { on: Day }): Day {
  return on;
}

/** The day that a day is. */
export function itself(day: Day): Day {
  return day;
}
