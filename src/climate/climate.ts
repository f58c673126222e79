/**
 * The climate of a garden as plain data, whichever basis it was worked out from.
 *
 * Time is counted in seasons. A season runs from the middle of one winter to the middle of the next and is named by
 * the calendar year it starts in: from 1 January in the north, from 1 July in the south. Inside a season a day is
 * its index, 1 on the first day, counted in years of 365 days (29 February shares the index of the 28th), so that
 * dates of different years can be laid over each other. Spring is indices 1–212, autumn 213–365: the split falls
 * after 31 July in the north and 28 January in the south, where a freeze is least likely.
 */
import type { DailyWeather, LoggedDay } from '../garden/weather.ts';
import type { Confidence } from './odds.ts';

/** The first day of every season, month and day. */
export type SeasonTurn = '01-01' | '07-01';

/** Last index that counts as spring (31 July north, 28 January south). */
export const LAST_SPRING_INDEX = 212;

/** Days in a season index. */
export const DAYS_IN_SEASON = 365;

/** Freeze limits, whole °F: 32, 28 and 24 (0, −2.2 and −4.4 °C). */
export type FreezeLimitF = 32 | 28 | 24;

/** The two freeze events of a season. */
export type FreezeEvent = 'last-spring' | 'first-autumn';

/** One day's weather without its date; absent where it was not measured. See `garden/weather.ts` for the units. */
export type DayWeather = { [Field in WeatherField]?: number | undefined };

/** What a day's weather may hold. */
export type WeatherField = Exclude<keyof DailyWeather, 'day'>;

/** One season of daily weather: each measurement by index − 1. */
export interface SeasonWeather extends Readonly<Record<WeatherField, readonly (number | undefined)[]>> {
  /** Calendar year the season starts in. */
  season: number;
  /** 29 February, in seasons that hold one: it shares the index of the 28th and is kept apart so that no day is lost. */
  leapDay?: DayWeather;
}

/** How the date of a freeze event is spread: counted season by season, or carried by published or assumed dates. */
export type FreezeDates =
  | {
      kind: 'counted';
      /** Season index of the event in each season that had one, ascending. */
      indices: readonly number[];
      /** Seasons with enough days to tell. */
      seasonsUsed: number;
    }
  | {
      kind: 'stated';
      /** Season index of the median date. */
      median: number;
      /** Standard deviation in days of the side before the median, and of the side after it. */
      spreadBeforeDays: number;
      spreadAfterDays: number;
    }
  /** A freeze can come in any month, or never comes: no date can be given. */
  | { kind: 'none' };

/** Twelve monthly means, January first. */
export interface MonthlyNormals {
  tmaxC: readonly number[];
  tminC: readonly number[];
  /** Monthly sums; absent where rain is not known. */
  rainMm?: readonly number[];
}

/** The climate a garden is planned by. */
export interface Climate {
  basis: 'daily-record' | 'station' | 'weighted-stations' | 'monthly-normals' | 'frost-dates';
  /** Where the figures come from, one sentence for the reader. */
  origin: string;
  confidence: Confidence;
  latitude: number;
  longitude: number;
  seasonTurn: SeasonTurn;
  freezes: Readonly<Record<FreezeLimitF, Readonly<Record<FreezeEvent, FreezeDates>>>>;
  /** Daily seasons, oldest first; empty unless the basis is a daily record. */
  seasons: readonly SeasonWeather[];
  /** The garden's own weather of late, oldest first, one row a day: what was seen, then what is expected. */
  logged: readonly LoggedDay[];
  /** Days by which freezes of a daily record are moved at each end of the season, as the garden asks. */
  frostOffsetDays: number;
  /** Monthly means: published, averaged from the record, or fitted. */
  normals: MonthlyNormals;
  /** USDA-style half zone ("5b") with the mean yearly minimum it comes from. */
  zone?: { zone: string; meanYearlyMinimumC: number; winters: number };
  /** What a reader should know: gaps, assumptions, height differences. May hold marked amounts (measures/quantity). */
  notes: readonly string[];
}
