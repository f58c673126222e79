/**
 * The days a crop may go in, in one season: from the first day of spring that is safe to the last sowing that still
 * ripens, or counted back from autumn for kinds grown towards it.
 */
import type { Climate } from '../../climate/climate.ts';
import { memory } from '../../climate/remembered.ts';
import { soilTempNormC } from '../../climate/soil-temperature.ts';
import { originOf, type Span } from '../../handbook/shapes/row.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import type { Reason } from '../draft.ts';
import { autumnWindow, type CropWindow, type LastWeeks } from './autumn.ts';
import { type FirstDay, type FirstDayAsk, firstDay, firstWeeks, type How } from './first-day.ts';
import { medianFreeze, weeksFrom } from './ground.ts';

export type { CropWindow } from './autumn.ts';

/** Days the first sowings stay at their best where warmth comes later than the class's own weeks. House default. */
const BEST_DAYS = 14;
/** Days after the median last freeze that kinds planted once still go in: 9 in Maine (veg:V1), 13 in Wisconsin (veg:V3). */
const ONCE_AFTER_FREEZE_DAYS = 9;
/** Days by which early kinds are ahead of the middle one the last sowings are reckoned for. House default (reference). */
const SHORT_BY_DAYS = 21;
/** Days a first sowing stays open where the season is short. House default. */
const SHORT_OPEN_DAYS = 7;

const windows = memory<Climate, string, CropWindow | undefined>();

/**
 * The window of a crop in a season, sown or set out. Worked out once a climate.
 *
 * @returns nothing where no freeze date is known, the soil stays too cold, or the season is too short for it
 */
export function cropWindow(climate: Climate, ask: FirstDayAsk): CropWindow | undefined {
  const name = `${ask.crop.id} ${ask.how} ${ask.season} ${ask.frostRisk}`;
  return windows(climate, name, () => workedOut(climate, ask));
}

function workedOut(climate: Climate, ask: FirstDayAsk): CropWindow | undefined {
  const { crop, how, season } = ask;
  const ahead = aheadWeeks(crop, how);
  const last = crop.lastSowWeeks && {
    preferred: crop.lastSowWeeks.preferred + ahead,
    hard: crop.lastSowWeeks.hard + ahead,
  };
  const window = crop.autumnSetWeeks
    ? autumnWindow(climate, crop, season, last, ahead)
    : springWindow(climate, ask, last);
  if (window === undefined || window.earliest <= window.latest) return window;
  return inShortSeason(crop, window);
}

/** Where spring comes later than the last day that ripens: early kinds may still make it, more than that would not. */
function inShortSeason(crop: Vegetable, { earliest, latest, ...window }: CropWindow): CropWindow | undefined {
  const days = daysBetween(latest, earliest);
  if (days > SHORT_BY_DAYS) return undefined;
  const end = addDays(earliest, SHORT_OPEN_DAYS);
  const short: Reason = {
    rule: 'plant.short-season',
    saw: { crop: crop.name.toLowerCase(), days, ripens: latest },
    limit: end,
    source: 'house default',
  };
  return { earliest, bestUntil: end, latest: end, earlyKindsFrom: earliest, opens: window.opens, closes: [short] };
}

/** Weeks by which seed sown in the bed must go in ahead of plants, where the table counts from setting out. */
function aheadWeeks({ maturityFrom, indoorWeeks }: Vegetable, how: How): number {
  return how === 'sow' && maturityFrom === 'transplant' && indoorWeeks ? middle(indoorWeeks) : 0;
}

function middle({ low, high }: Span): number {
  return (low + high) / 2;
}

function springWindow(climate: Climate, ask: FirstDayAsk, last: LastWeeks | undefined): CropWindow | undefined {
  const { crop, how, season } = ask;
  const [spring, autumn] = [
    medianFreeze(climate, 'last-spring', season),
    medianFreeze(climate, 'first-autumn', season),
  ];
  const weeks = firstWeeks(crop, how);
  const first = firstDay(climate, ask);
  if (spring === undefined || autumn === undefined || weeks === undefined || first === undefined) return undefined;
  const ends = latestOf(weeksFrom(spring, weeks.toWeeks), addDays(first.day, BEST_DAYS));
  if (last === undefined) return firstOnly(crop, first, weeks.toWeeks, spring, ends);
  const latest = weeksFrom(autumn, -last.hard);
  const preferredLast = weeksFrom(autumn, -last.preferred);
  const saw = { crop: crop.name.toLowerCase(), weeks: last.hard, freeze: autumn, preferred: preferredLast };
  const late = preferredLast < latest ? { lateFrom: addDays(preferredLast, 1) } : {};
  const early = crop.earlyKindsOnlyWeeks;
  return {
    earliest: first.day,
    bestUntil: earliestOf(ends, latest),
    latest,
    opens: first.reasons,
    closes: [{ rule: 'plant.last', saw, limit: latest, source: originOf(crop, 'lastSowWeeks') }],
    ...late,
    ...(early === undefined ? {} : { earlyKindsFrom: weeksFrom(latest, -early) }),
  };
}

/**
 * A kind that goes in once, in spring: bulbs swell by the length of the day, lasting crops want their first summer. Its
 * class's weeks are the best for it; the charts of Maine and Wisconsin let it in a little longer (veg:V1, veg:V3).
 */
function firstOnly(crop: Vegetable, first: FirstDay, toWeeks: number, freeze: Day, bestUntil: Day): CropWindow {
  const latest = latestOf(bestUntil, addDays(freeze, ONCE_AFTER_FREEZE_DAYS));
  const saw = { crop: crop.name.toLowerCase(), weeks: toWeeks, freeze, best: bestUntil };
  const end: Reason = { rule: 'plant.first-only', saw, limit: latest, source: 'veg:V1' };
  const late = bestUntil < latest ? { lateFrom: addDays(bestUntil, 1) } : {};
  return { earliest: first.day, bestUntil, latest, opens: first.reasons, closes: [end], ...late };
}

/**
 * The first day from a day on at which the soil is cool enough for seed to sprout, and why.
 *
 * @returns the day itself where it is cool enough; nothing where it does not cool by the last day
 */
export function cooledFrom(climate: Climate, { soilMaxC }: Vegetable, day: Day, last: Day): Day | undefined {
  if (soilMaxC === undefined) return day;
  let cooled = day;
  while (cooled <= last && soilTempNormC(climate, cooled) > soilMaxC) cooled = addDays(cooled, 1);
  return cooled <= last ? cooled : undefined;
}
