/**
 * When a crop that stands through winter is over: its days to maturity are published for growing weather.
 */
import type { Climate } from '../climate/climate.ts';
import { freezeDay } from '../climate/freeze.ts';
import type { Planting } from '../garden/garden.ts';
import type { Vegetable } from '../handbook/shapes/vegetable.ts';
import { addDays, type Day } from '../measures/days.ts';
import { isAfterMidsummer, midsummerOf, midwinterAfter, seasonAfter, soilAwake } from './seasons.ts';

/** A span of days of a season. */
export interface Season {
  from: Day;
  to: Day;
}

/** Crops sown in autumn to be picked in the summer after it, and never in the year they are sown. Common practice. */
const SOWN_TO_STAND_OVER: ReadonlySet<string> = new Set(['fava-bean']);

/**
 * Days from midsummer on which garlic of autumn is lifted: late June to late July in Minnesota (University of Minnesota
 * Extension, Growing garlic), as days from 1 July.
 */
const GARLIC_LIFTED_DAYS = { from: -6, to: 30 } as const;

/** Weeks before the median last freeze from which hardy kinds go in (veg:V6). */
const HARDY_WEEKS = -6;

/**
 * The days of summer in which garlic is lifted; nothing for other crops, nor for cloves put in once spring has begun:
 * nobody says when those are ripe.
 */
export function liftingSeason(crop: Vegetable, from: Day, climate: Climate): Season | undefined {
  if (crop.maturityFrom !== 'fall-set') return undefined;
  const season = seasonAfter(climate, from);
  const spring = springDay(climate, season, HARDY_WEEKS);
  if (spring !== undefined && from >= spring) return undefined;
  const midsummer = midsummerOf(climate, season);
  return { from: addDays(midsummer, GARLIC_LIFTED_DAYS.from), to: addDays(midsummer, GARLIC_LIFTED_DAYS.to) };
}

/**
 * The day from which the days to maturity of a crop that stands through winter are counted: the first on which seed or
 * plants of its kind would go in that spring. It may be ripe before, never after.
 *
 * @param by the day its last is ripe if winter were growing weather, the day its first is, and the freeze that ends it
 * @returns nothing for a crop of summer, nor for one that frost kills
 */
export function countedFromSpring(
  { start }: Planting,
  crop: Vegetable,
  climate: Climate,
  by: { ripe: Day; first: Day; killed: Day | undefined },
): Day | undefined {
  if (crop.maturityFrom === 'fall-set' || (crop.frostClass !== 'hardy' && crop.frostClass !== 'half-hardy')) return;
  const season = seasonAfter(climate, start.day);
  const standsOver =
    !isAfterMidsummer(climate, start.day) ||
    (by.killed === undefined
      ? by.ripe > midwinterAfter(climate, start.day)
      : SOWN_TO_STAND_OVER.has(crop.id) && by.first > by.killed);
  if (!standsOver) return undefined;
  const window = start.how === 'sow' ? crop.firstSowWeeks : (crop.firstSetOutWeeks ?? crop.firstSowWeeks);
  const spring = springDay(climate, season, window?.fromWeeks ?? HARDY_WEEKS);
  return spring !== undefined && spring > start.day ? spring : undefined;
}

/** A day of spring in weeks from the median last freeze; the day the soil wakes where no freeze is known. */
function springDay(climate: Climate, season: number, weeks: number): Day | undefined {
  const last = freezeDay(climate, { event: 'last-spring', limitF: 32, season, chancePercent: 50 });
  return last === undefined ? soilAwake(climate, season) : addDays(last, 7 * weeks);
}
