/**
 * The hours of a cold night: covered while the soil is still warm, uncovered once the frost has gone.
 */
import { daylight } from '../../climate/daylight.ts';
import type { Place } from '../../garden/garden.ts';
import type { Day, Instant } from '../../measures/days.ts';
import type { TaskDraft } from '../draft.ts';

type Hour = NonNullable<TaskDraft['at']>;

/** Minutes before sunset by which covers are on, so that they hold the warmth of the day. House default. */
export const ON_BEFORE_SUNSET_MINUTES = 30;

/** Minutes after sunrise that covers come off, the frost gone from them. House default. */
export const OFF_AFTER_SUNRISE_MINUTES = 60;

/** Hours begin and end on the five minutes, and last quarters of an hour. */
const CLOCK_MINUTES = 5;
const QUARTER_MINUTES = 15;
const MS_PER_MINUTE = 60_000;

/** When to cover on an evening: finished before sunset. Nothing where the sun does not set. */
export function coverHour({ latitude, longitude }: Place, evening: Day, effortMinutes: number): Hour | undefined {
  const { sunset } = daylight(latitude, longitude, evening);
  if (sunset === undefined) return undefined;
  const minutes = quarters(effortMinutes);
  const end = Math.floor(minutesOf(sunset) - ON_BEFORE_SUNSET_MINUTES);
  return { from: instantOf(end - (end % CLOCK_MINUTES) - minutes), minutes };
}

/** When to uncover on a morning. Nothing where the sun does not rise. */
export function uncoverHour({ latitude, longitude }: Place, morning: Day, effortMinutes: number): Hour | undefined {
  const { sunrise } = daylight(latitude, longitude, morning);
  if (sunrise === undefined) return undefined;
  const from = Math.ceil((minutesOf(sunrise) + OFF_AFTER_SUNRISE_MINUTES) / CLOCK_MINUTES) * CLOCK_MINUTES;
  return { from: instantOf(from), minutes: quarters(effortMinutes) };
}

function quarters(minutes: number): number {
  return Math.ceil(minutes / QUARTER_MINUTES) * QUARTER_MINUTES;
}

function minutesOf(instant: Instant): number {
  return Date.parse(instant) / MS_PER_MINUTE;
}

function instantOf(minutes: number): Instant {
  return new Date(minutes * MS_PER_MINUTE).toISOString();
}
