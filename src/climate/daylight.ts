/**
 * Sunrise, sunset and the length of the day: upper edge of the sun, usual refraction.
 */
import { getTimes } from 'suncalc';
import { type Day, type Instant, serialOf } from '../measures/days.ts';

const MS_PER_HOUR = 3_600_000;
const MS_PER_DAY = 24 * MS_PER_HOUR;
const DEGREES_PER_HOUR = 15;

/** The light of one day. Under the midnight sun and in the polar night there is no sunrise or sunset. */
interface Daylight {
  sunrise?: Instant;
  sunset?: Instant;
  /** Hours from sunrise to sunset; 24 or 0 where the sun does not cross the horizon. */
  hours: number;
  alwaysUp: boolean;
  alwaysDown: boolean;
}

/**
 * Daylight at a place on a day, within about a minute of published sun tables up to 60° of latitude.
 *
 * @param longitude degrees, east positive
 */
export function daylight(latitude: number, longitude: number, day: Day): Daylight {
  const localNoon = serialOf(day) * MS_PER_DAY + (12 - longitude / DEGREES_PER_HOUR) * MS_PER_HOUR;
  const { sunrise, sunset, alwaysUp = false, alwaysDown = false } = getTimes(new Date(localNoon), latitude, longitude);
  if (!sunrise || !sunset) return { hours: alwaysUp ? 24 : 0, alwaysUp, alwaysDown };
  return {
    sunrise: sunrise.toISOString(),
    sunset: sunset.toISOString(),
    hours: (sunset.valueOf() - sunrise.valueOf()) / MS_PER_HOUR,
    alwaysUp,
    alwaysDown,
  };
}
