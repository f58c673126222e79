/**
 * The weather behind the demo garden: a real daily record, borrowed for a place that does not exist.
 */
import type { DailyWeather } from '../src/garden/weather.ts';
import { type Day, eachDay, inYear, monthDayOf, yearOf } from '../src/measures/days.ts';

/** The past year that stands for the demo garden's current one. It is left out of the odds. */
export const DEMO_WEATHER_YEAR = 2018;

/** The record, where it comes from and the season kept out of the odds. The file lies in weather/ beside this one. */
export const demoWeather = {
  file: 'milwaukee-1989-2021.csv.gz',
  origin:
    'The garden is invented; its weather is that of Milwaukee Mitchell Airport, Wisconsin (NOAA GHCN-Daily ' +
    `USW00014839, July 1988 to December 2021). The season of ${DEMO_WEATHER_YEAR} plays the current year and is left out.`,
  leftOut: [DEMO_WEATHER_YEAR],
} as const;

/** The month and day from which the year before the anchor's is given too, so that the winter in between is whole. */
const WINTER_FROM = '07-01';

/**
 * A past year's weather laid on the days up to the anchor: from 1 July of the year before the anchor's, which takes
 * the year before the past one, to the anchor itself. Days the record does not hold are left out.
 */
export function shiftedWeather(
  rows: readonly DailyWeather[],
  { year, anchor }: { year: number; anchor: Day },
): DailyWeather[] {
  const byDay = new Map(rows.map((row) => [row.day, row]));
  const shift = yearOf(anchor) - year;
  return eachDay(inYear(WINTER_FROM, yearOf(anchor) - 1), anchor).flatMap((day) => {
    // 29 February of a leap year takes the row of the 28th again where the past year has no 29 February.
    const row = byDay.get(inYear(monthDayOf(day), yearOf(day) - shift));
    return row ? [{ ...row, day }] : [];
  });
}
