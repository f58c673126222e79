/**
 * How likely each night of a stretch of days freezes: what a chart of the year shows, where the odds of the last and the
 * first freeze are dates.
 */
import { addDays, type Day, eachDay } from '../measures/days.ts';
import { celsius } from '../measures/units.ts';
import { airNorms } from './air.ts';
import { type Climate, DAYS_IN_SEASON, type FreezeLimitF, LAST_SPRING_INDEX } from './climate.ts';
import { dailySpreadC } from './daily-spread.ts';
import { freezesAt } from './freeze-record.ts';
import { usualOf } from './logged.ts';
import { normalShareBelow } from './quantiles.ts';
import { memory } from './remembered.ts';
import { seasonIndex } from './season.ts';
import { type DaySpan, POOLED_EACH_SIDE } from './season-course.ts';
import { daysAt } from './season-weather.ts';

/** A night with the odds that it freezes. */
export interface FreezeNight {
  day: Day;
  /** Share of the nights from three days before to three after that are at or below the limit, 0–1. */
  share: number;
}

/**
 * The odds of a freeze night by night. A record's seasons are counted; of monthly means the mean minimum is taken with the
 * usual spread of single nights about it (fitted.ts). A night of the garden's own log froze or it did not.
 *
 * @param limitF freeze limit, whole °F
 * @returns nothing where a climate knows no more than freeze dates
 */
export function freezeNights(climate: Climate, limitF: FreezeLimitF, { from, to }: DaySpan): FreezeNight[] {
  if (climate.basis === 'frost-dates') return [];
  const usual = usualShares(climate, limitF);
  const seen = new Map(climate.logged.map(({ day, tminC }) => [day, tminC]));
  const shareOn = (day: Day): number | undefined => {
    const tminC = seen.get(day);
    return tminC === undefined ? usual[seasonIndex(climate.seasonTurn, day) - 1] : Number(freezesAt(tminC, limitF));
  };
  const nights = eachDay(addDays(from, -POOLED_EACH_SIDE), addDays(to, POOLED_EACH_SIDE)).map(shareOn);
  return eachDay(from, to).flatMap((day, at) => {
    const about = nights.slice(at, at + 2 * POOLED_EACH_SIDE + 1).filter((share) => share !== undefined);
    return about.length === 0 ? [] : [{ day, share: about.reduce((sum, share) => sum + share, 0) / about.length }];
  });
}

const usuals = memory<Climate, FreezeLimitF, readonly (number | undefined)[]>();

/** The share of nights that freeze at each index − 1 of a season, without the garden's own weather. */
function usualShares(given: Climate, limitF: FreezeLimitF): readonly (number | undefined)[] {
  const climate = usualOf(given);
  return usuals(climate, limitF, () => {
    const shareAt = climate.seasons.length > 0 ? countedShare : reckonedShare;
    return Array.from({ length: DAYS_IN_SEASON }, (_, i) => shareAt(climate, limitF, i + 1));
  });
}

/** Counted over the record's seasons, moved at each end of the season as its freeze dates are. */
function countedShare({ seasons, seasonTurn, frostOffsetDays }: Climate, limitF: FreezeLimitF, index: number) {
  const moved = index <= LAST_SPRING_INDEX ? index - frostOffsetDays : index + frostOffsetDays;
  const held = Math.min(Math.max(moved, 1), DAYS_IN_SEASON);
  const nights = seasons
    .flatMap((season) => daysAt(seasonTurn, season, held).map(({ tminC }) => tminC))
    .filter((tminC) => tminC !== undefined);
  if (nights.length === 0) return undefined;
  return nights.filter((tminC) => freezesAt(tminC, limitF)).length / nights.length;
}

/** A night counts in whole °F, so that it freezes up to half a degree above the limit. */
const WHOLE_DEGREE_F = 0.5;

function reckonedShare(climate: Climate, limitF: FreezeLimitF, index: number): number | undefined {
  const minC = airNorms(climate)[index - 1]?.minC;
  if (minC === undefined) return undefined;
  const spreadC = dailySpreadC(index).minimum;
  return normalShareBelow((celsius(limitF + WHOLE_DEGREE_F) - minC) / spreadC);
}
