/**
 * Days of cold that planting is held to: hard nights, and the ground freezing.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { soilTempNormC } from '../../climate/soil-temperature.ts';
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { midsummerOf } from '../seasons.ts';

/** How far 25 °F, the night a set-out hardy plant should not meet, lies from 24 °F towards 28 °F. */
const SHARE_TO_25_F = 1 / 4;

/** Days of autumn and winter looked through for frozen ground. */
const LOOKED_THROUGH_DAYS = 240;

/**
 * The day from which a night of 25 °F or colder still comes in less than half of the years: between the medians of 24
 * and 28 °F.
 *
 * @returns nothing where so cold a night is rarer than that, or no date is known
 */
export function lastHardNight(climate: Climate, season: number): Day | undefined {
  const median = (limitF: 24 | 28): Day | undefined =>
    freezeDay(climate, { event: 'last-spring', limitF, season, chancePercent: 50 });
  const [hard, light] = [median(24), median(28)];
  if (hard === undefined) return undefined;
  return light === undefined ? hard : latestOf(hard, addDays(hard, daysBetween(hard, light) * SHARE_TO_25_F));
}

/** The first day after a season's midsummer on which the ground at 10 cm is usually at or below 0 °C. */
export function groundFreezes(climate: Climate, season: number): Day | undefined {
  const from = midsummerOf(climate, season);
  for (let days = 1; days <= LOOKED_THROUGH_DAYS; days += 1) {
    const day = addDays(from, days);
    if (soilTempNormC(climate, day) <= 0) return day;
  }
  return undefined;
}

/** The median last spring or first autumn freeze of 32 °F in a season. */
export function medianFreeze(climate: Climate, event: 'last-spring' | 'first-autumn', season: number): Day | undefined {
  return freezeDay(climate, { event, limitF: 32, season, chancePercent: 50 });
}

/** Whether both freeze dates of the season of a day are known, so that weeks can be counted from them. */
export function freezesKnown(climate: Climate, day: Day): boolean {
  const season = seasonOf(climate.seasonTurn, day);
  return (
    medianFreeze(climate, 'last-spring', season) !== undefined &&
    medianFreeze(climate, 'first-autumn', season) !== undefined
  );
}

/** So many weeks after a day (before it when negative), to the nearest day. */
export function weeksFrom(day: Day, weeks: number): Day {
  return addDays(day, Math.round(7 * weeks));
}
