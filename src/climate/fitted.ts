/**
 * Constants measured on real records, each with how it was got. docs/climate.md has the tables; the tests measure them
 * again on the records and the station table carried in the project.
 */
import type { FreezeEvent } from './climate.ts';

/**
 * Standard deviation of one day's temperature about its usual value, °C, January first, northern months: of the daily
 * mean, minimum and maximum. Mean of the Milwaukee and Bozeman records, 1981–2010, each month's
 * own rise or fall taken out.
 */
export const DAILY_SPREAD_C = {
  mean: [6.3, 6.1, 5.1, 4.7, 4.5, 4.0, 3.3, 3.2, 4.1, 4.65, 5.35, 6.25],
  minimum: [7.0, 6.6, 5.0, 4.0, 3.9, 3.6, 3.1, 3.1, 3.8, 4.3, 5.4, 6.8],
  maximum: [6.2, 6.1, 5.9, 6.2, 5.8, 5.0, 4.2, 3.9, 5.1, 5.7, 5.8, 6.2],
} as const;

/**
 * Standard deviation over years of the day a sum of degree-days is reached, days: counted across midwinter, and within one
 * growing season. From twelve sums of cover crops on the Milwaukee and Bozeman records, 1991–2020: 6.6 to 8.8 and 2.9
 * to 7.0 (docs/climate.md).
 */
export const HEAT_DATE_SPREAD_DAYS = { acrossMidwinter: 7, withinSeason: 4 } as const;

/**
 * Standard deviation over years of the first day of a warm week in the soil, days. Mean of the Milwaukee and Bozeman
 * records, 1991–2020, over 4.4, 5, 7, 10, 13, 15 and 16 °C.
 */
export const SOIL_WARM_SPREAD_DAYS = 14;

/**
 * The usual minimum on the median date of the 0 °C freeze, °C: `atZero` plus `perDegree` for each degree of the warmest
 * month's mean minimum. Least squares on every second station of the table north of 40° N.
 */
export const FREEZE_LEVEL_C: Readonly<Record<FreezeEvent, { atZero: number; perDegree: number }>> = {
  'last-spring': { atZero: 3.4, perDegree: 0.1 },
  'first-autumn': { atZero: 2.2, perDegree: 0.2 },
};

/**
 * Standard deviation over years of the 0 °C freeze date, days: median over the stations north of 40° N of the days
 * between the published 50 % and 90 % dates, divided by 1.2816.
 */
export const FREEZE_SPREAD_DAYS: Readonly<Record<FreezeEvent, number>> = { 'last-spring': 10.9, 'first-autumn': 10.1 };

/**
 * Half the swing of the mean minimum over the year, °C: median over the stations north of 40° N of the first harmonic
 * through the twelve months, and the range that nine stations of ten keep above and below.
 */
export const YEARLY_SWING_C = { usual: 12.5, least: 8, most: 15.1 } as const;

/** Mean maximum less mean minimum by month, °C, January first, northern months: medians of the stations north of 40° N. */
export const DAILY_RANGE_C = [10.1, 10.9, 11.6, 13.1, 13.4, 13.0, 13.0, 13.0, 13.6, 12.8, 10.1, 9.4] as const;

/**
 * Degrees the mean yearly minimum lies below the mean minimum of the coldest month, °C: 14 at Milwaukee and 18 at
 * Bozeman, 1991–2020; two stations, no more.
 */
export const BELOW_COLDEST_MONTH_C = 16;

/**
 * What 100 m of height does: days later in spring and earlier in autumn, degrees colder at night and by day. Slopes over
 * the pairs of stations under 50 km apart and over 100 m different in height, in the whole table; north of 40° N the
 * days are 3.4 and 2.0.
 */
export const PER_100_M_UP = { springDays: 3.8, autumnDays: -2.1, minimumC: -0.43, maximumC: -0.64 } as const;
