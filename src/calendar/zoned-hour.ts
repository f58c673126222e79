/**
 * Hours of the garden's own clock as moments.
 */
import { DateTime } from 'luxon';
import type { Day, Instant } from '../measures/days.ts';

/** The moment a whole hour of a day begins in a zone; where the clocks skip that hour, the one after it. */
export function zonedHour(timeZone: string, day: Day, hour: number): Instant {
  return new Date(DateTime.fromISO(day, { zone: timeZone }).set({ hour }).toMillis()).toISOString();
}
