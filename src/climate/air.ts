/**
 * What the air is usually like on a day of the year.
 *
 * From a daily record: the mean of its seasons, smoothed over fifteen days. From monthly means: straight lines between
 * the middles of months.
 */
import type { Day } from '../measures/days.ts';
import { type Climate, DAYS_IN_SEASON, type SeasonWeather } from './climate.ts';
import { usualOf } from './logged.ts';
import { dayOfIndex, seasonIndex } from './season.ts';
import { courseOf } from './yearly-curve.ts';

/** Days averaged on either side of the day: fifteen in all, so that thirty seasons give a steady line. House default. */
const SMOOTHED_EACH_SIDE = 7;

/** Usual air temperatures of a day, °C: mean minimum, mean maximum, and the mean of both. */
interface AirNorm {
  minC: number;
  maxC: number;
  meanC: number;
}

const courses = new WeakMap<Climate, readonly AirNorm[]>();

/** Usual air temperatures by season index − 1, 365 of them. Worked out once for each climate. */
export function airNorms(given: Climate): readonly AirNorm[] {
  const climate = usualOf(given);
  const known = courses.get(climate);
  if (known) return known;
  const { seasons, normals, seasonTurn } = climate;
  const minima = seasons.length > 0 ? smoothMean(seasons, 'tminC') : courseOf(normals.tminC, seasonTurn);
  const maxima = seasons.length > 0 ? smoothMean(seasons, 'tmaxC') : courseOf(normals.tmaxC, seasonTurn);
  const course = minima.map((minC, i) => {
    const maxC = maxima[i] ?? Number.NaN;
    return { minC, maxC, meanC: (minC + maxC) / 2 };
  });
  courses.set(climate, course);
  return course;
}

function smoothMean(seasons: readonly SeasonWeather[], which: 'tminC' | 'tmaxC'): number[] {
  const sums = Array.from({ length: DAYS_IN_SEASON }, (_, i) => {
    const known = seasons.map((season) => season[which][i]).filter((tempC) => tempC !== undefined);
    return { sum: known.reduce((a, b) => a + b, 0), count: known.length };
  });
  return sums.map((_, i) => {
    let [sum, count] = [0, 0];
    for (let shift = -SMOOTHED_EACH_SIDE; shift <= SMOOTHED_EACH_SIDE; shift += 1) {
      const day = sums[(i + shift + DAYS_IN_SEASON) % DAYS_IN_SEASON];
      sum += day?.sum ?? 0;
      count += day?.count ?? 0;
    }
    return sum / count;
  });
}

/** Usual air temperatures on a day, °C. */
export function airTempNormC(climate: Climate, day: Day): AirNorm {
  const norm = airNorms(climate)[seasonIndex(climate.seasonTurn, day) - 1];
  if (!norm) throw new RangeError(`No usual temperature for ${day}: not a real date.`);
  return norm;
}

/** Mean air temperature of the usual year, °C. */
export function yearlyMeanAirC(climate: Climate): number {
  return airNorms(climate).reduce((sum, { meanC }) => sum + meanC, 0) / DAYS_IN_SEASON;
}

/**
 * The span of a season in which the usual daily mean is at or above a temperature: its first and last day. Both absent
 * where it never gets there; a whole season where it never gets colder.
 */
export function meanAirStaysAbove(
  climate: Climate,
  { season, tempC }: { season: number; tempC: number },
): { from?: Day; to?: Day } {
  const warm = airNorms(climate).map(({ meanC }) => meanC >= tempC);
  const first = warm.indexOf(true) + 1;
  if (first === 0) return {};
  return {
    from: dayOfIndex(climate.seasonTurn, season, first),
    to: dayOfIndex(climate.seasonTurn, season, warm.lastIndexOf(true) + 1),
  };
}
