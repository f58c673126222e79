/**
 * The cold nights a garden knows of: those told by themselves, and those its weather log holds.
 */
import { addDays, type Day } from '../measures/days.ts';
import type { ColdNight, Garden } from './garden.ts';
import type { LoggedDay } from './weather.ts';

/** A night with what its low rests on: told as such, logged as a day's low, or taken from snow. */
export interface ToldNight extends ColdNight {
  from: 'told' | 'log' | 'snow';
  /** Whether snow lies, or is expected to lie or fall, on the day of its evening or the day after. */
  snow: boolean;
}

/** The low a night is taken for where snow is all that is known of it: snow that stays lies at freezing. House default. */
const SNOW_NIGHT_C = 0;

/**
 * All nights told or logged, the weaker word for an evening before the stronger: snow, then a logged low, then what was
 * told of the night itself, each in the order it was told.
 *
 * The low of a day falls on its morning, so that it belongs to the evening before. Snow that was seen makes the coming
 * evening a cold one; snow that is expected, also the evening before it falls.
 */
export function toldNights({ coldNights, weather }: Pick<Garden, 'coldNights' | 'weather'>): ToldNight[] {
  const snowy = new Set(weather.filter(isSnowy).map(({ day }) => day));
  const withSnow = (night: ColdNight, from: ToldNight['from']): ToldNight => {
    const snow = snowy.has(night.evening) || snowy.has(addDays(night.evening, 1));
    return { ...night, from, snow };
  };
  return [
    ...weather
      .filter(isSnowy)
      .flatMap((row) =>
        eveningsOfSnow(row).map((evening) => withSnow({ evening, lowC: SNOW_NIGHT_C, how: 'expected' }, 'snow')),
      ),
    ...weather.flatMap(({ day, kind, tminC }) => {
      if (tminC === undefined) return [];
      const how = kind === 'observed' ? 'measured' : 'expected';
      return [withSnow({ evening: addDays(day, -1), lowC: tminC, how }, 'log')];
    }),
    ...coldNights.map((night) => withSnow(night, 'told')),
  ];
}

function isSnowy({ newSnowMm = 0, snowDepthMm = 0 }: LoggedDay): boolean {
  return newSnowMm > 0 || snowDepthMm > 0;
}

function eveningsOfSnow({ day, kind }: LoggedDay): Day[] {
  return kind === 'expected' ? [addDays(day, -1), day] : [day];
}

/** The lows expected, by evening, the latest word for each. */
export function expectedNights(garden: Pick<Garden, 'coldNights' | 'weather'>): ToldNight[] {
  return latestOfEach(toldNights(garden), 'expected');
}

/** The lows measured, by evening, the latest word for each. */
export function measuredNights(garden: Pick<Garden, 'coldNights' | 'weather'>): ToldNight[] {
  return latestOfEach(toldNights(garden), 'measured');
}

function latestOfEach(nights: readonly ToldNight[], how: ColdNight['how']): ToldNight[] {
  const told = nights.filter((night) => night.how === how);
  return [...new Map(told.map((night) => [night.evening, night])).values()].sort((a, b) =>
    a.evening < b.evening ? -1 : 1,
  );
}
