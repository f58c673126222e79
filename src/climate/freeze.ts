/**
 * The odds of a freeze: on which day it comes as rarely as wanted, and how likely it still is after a day.
 *
 * Seasons without a freeze are counted in (agro:S3). With q the share of seasons that have the event and F(d) the
 * share of those in which it falls on or before day d, the last spring freeze comes after d in q·(1 − F(d)) of all
 * seasons and the first autumn freeze has come by d in q·F(d); a chance of q or more has no date.
 */
import type { Day } from '../measures/days.ts';
import type { Climate, FreezeDates, FreezeEvent, FreezeLimitF } from './climate.ts';
import type { Odds } from './odds.ts';
import { normalQuantile, normalShareBelow, quantileType6 } from './quantiles.ts';
import { dayOfIndex, seasonIndex, seasonOf } from './season.ts';
import { freezeDatesIn } from './season-freezes.ts';

/**
 * The day a freeze comes as rarely as asked. Last spring freeze: it still comes on or after that day in
 * `chancePercent` of years (10 is the late, safe date). First autumn freeze: it has come on or before that day in
 * `chancePercent` of years (10 is the early, cautious date).
 *
 * @param limitF freeze limit, whole °F
 * @param chancePercent 1–99
 * @returns nothing where no date has that chance
 */
export function freezeDay(
  climate: Climate,
  ask: { event: FreezeEvent; limitF: FreezeLimitF; season: number; chancePercent: number },
): Day | undefined {
  const index = freezeIndex(freezeDatesIn(climate, ask), ask.event, ask.chancePercent / 100);
  return index === undefined ? undefined : dayOfIndex(climate.seasonTurn, ask.season, index);
}

/** Season index with a chance of 0–1 in the sense of {@link freezeDay}. */
function freezeIndex(dates: FreezeDates, event: FreezeEvent, chance: number): number | undefined {
  switch (dates.kind) {
    case 'none':
      return undefined;
    case 'stated': {
      const z = normalQuantile(event === 'last-spring' ? 1 - chance : chance);
      return dates.median + z * (z < 0 ? dates.spreadBeforeDays : dates.spreadAfterDays);
    }
    case 'counted': {
      const ofFreezeSeasons = chance / (dates.indices.length / dates.seasonsUsed);
      if (ofFreezeSeasons >= 1) return undefined;
      return quantileType6(dates.indices, event === 'last-spring' ? 1 - ofFreezeSeasons : ofFreezeSeasons);
    }
    default:
      return dates satisfies never;
  }
}

/**
 * How a freeze date is spread. Spring: in one, five and nine years of ten no freeze comes on or after `early`,
 * `median` and `late`. Autumn: the first freeze has come by them. Published or assumed dates give 0 years.
 */
export function freezeOdds(climate: Climate, ask: { event: FreezeEvent; limitF: FreezeLimitF; season: number }): Odds {
  const spring = ask.event === 'last-spring';
  const early = freezeDay(climate, { ...ask, chancePercent: spring ? 90 : 10 });
  const median = freezeDay(climate, { ...ask, chancePercent: 50 });
  const late = freezeDay(climate, { ...ask, chancePercent: spring ? 10 : 90 });
  return {
    ...(early === undefined ? {} : { early }),
    ...(median === undefined ? {} : { median }),
    ...(late === undefined ? {} : { late }),
    ...shareAndYears(freezeDatesIn(climate, ask)),
  };
}

function shareAndYears(dates: FreezeDates): { shareOfYears: number; years: number } {
  if (dates.kind === 'none') return { shareOfYears: 0, years: 0 };
  if (dates.kind === 'stated') return { shareOfYears: 1, years: 0 };
  return { shareOfYears: dates.indices.length / dates.seasonsUsed, years: dates.seasonsUsed };
}

/**
 * Share of years, 0–1, whose last spring freeze falls on or after a day of that day's season. Counted years are
 * counted, so the share steps by one year. Nothing where no freeze date is known.
 */
export function chanceOfFreezeOnOrAfter(
  climate: Climate,
  { limitF, day }: { limitF: FreezeLimitF; day: Day },
): number | undefined {
  const season = seasonOf(climate.seasonTurn, day);
  const dates = freezeDatesIn(climate, { event: 'last-spring', limitF, season });
  const index = seasonIndex(climate.seasonTurn, day);
  if (dates.kind === 'none') return undefined;
  if (dates.kind === 'counted') return dates.indices.filter((freeze) => freeze >= index).length / dates.seasonsUsed;
  const spread = index < dates.median ? dates.spreadBeforeDays : dates.spreadAfterDays;
  return 1 - normalShareBelow((index - dates.median) / spread);
}
