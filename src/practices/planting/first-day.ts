/**
 * The first day a crop may go in: its class's weeks from the last freeze, the odds of a night that would take it, and
 * soil warm enough to sprout or root.
 */
import type { Climate, FreezeLimitF } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import { usualOf } from '../../climate/logged.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import type { SpringSowing } from '../../handbook/shapes/plant.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { celsius } from '../../measures/units.ts';
import { isPermanent } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import { lastHardNight, medianFreeze, weeksFrom } from './ground.ts';

/** Percent odds of a later freeze by which very tender kinds go in, where odds are known. House default (reference: 10). */
export const VERY_TENDER_PERCENT = 10;
/** Percent odds of a later freeze that half-hardy kinds bear: those of the hard night hardy plants are kept from (reference). */
const HALF_HARDY_PERCENT = 50;
/** Days a kind's seed is safe in the ground before it is up. House default, short of any trial's (agro:S45). */
export const UNDER_GROUND_DAYS = 7;
/** Days before the limit that decides within which another is still worth saying. House default. */
const NEAR_DAYS = 14;
/** The night of spring that takes a class just up or just out (veg:V49; hardy from memory), as its first one ends it. */
export const SPRING_FREEZE_F: Readonly<Record<Vegetable['frostClass'], FreezeLimitF>> = {
  'very-tender': 32,
  tender: 32,
  'half-hardy': 28,
  hardy: 24,
};
/** 25 °F: what hardy kinds just set out do not bear (from memory, as their damage limit is). */
const HARD_NIGHT_C = -3.9;
/** The weeks of a kind that names none: the median last freeze itself. House default. */
const NO_WEEKS: SpringSowing = { fromWeeks: 0, toWeeks: 0 };

/** How a crop goes into its bed. */
export type How = 'sow' | 'set-out';

/** What a first day hangs on besides the climate. */
export interface FirstDayAsk {
  crop: Vegetable;
  how: How;
  season: number;
  /** Percent odds of a freeze the garden plans tender things by. */
  frostRisk: number;
}

/** A first day with the reasons for it, the one that decides first. */
export interface FirstDay {
  day: Day;
  reasons: readonly Reason[];
}

/** The weeks of the first sowing, or of the first setting out where that is later; nothing for autumn's kinds. */
export function firstWeeks(crop: Vegetable, how: How): SpringSowing | undefined {
  return how === 'set-out' ? (crop.firstSetOutWeeks ?? crop.firstSowWeeks) : crop.firstSowWeeks;
}

/** The first day of spring; nothing where no freeze date is known or spring's soil never gets warm enough. */
export function firstDay(climate: Climate, ask: FirstDayAsk): FirstDay | undefined {
  const soil = warmSoil(climate, ask);
  const limits = [...frostLimits(climate, ask), ...(soil === 'any' || soil === 'never' ? [] : [soil])];
  const [first, ...others] = limits.map(({ day }) => day);
  if (soil === 'never' || first === undefined) return undefined;
  const day = latestOf(first, ...others);
  const reasons = limits
    .filter((limit) => daysBetween(limit.day, day) <= NEAR_DAYS || limit.reason.rule === 'plant.soil-slow')
    .sort((a, b) => (a.day > b.day ? -1 : a.day < b.day ? 1 : 0))
    .map(({ reason }) => reason);
  return { day, reasons };
}

/** One thing that holds a crop back. */
interface Limit {
  day: Day;
  reason: Reason;
}

/**
 * A class's weeks are counted from the median of past years, which is what they were published against; this season's own
 * nights count through the odds, so that a late frost holds back what it would take and nothing that bears it.
 */
function frostLimits(climate: Climate, ask: FirstDayAsk): Limit[] {
  const freeze = medianFreeze(usualOf(climate), 'last-spring', ask.season);
  if (freeze === undefined) return [];
  const { frostClass } = ask.crop;
  if (frostClass === 'very-tender' && hasOdds(climate)) return oddsLimit(climate, ask, VERY_TENDER_PERCENT, 0);
  const byClass = classLimit(climate, ask, freeze);
  const ahead = ask.how === 'sow' ? UNDER_GROUND_DAYS : 0;
  if (frostClass === 'tender') return [byClass, ...oddsLimit(climate, ask, ask.frostRisk, ahead)];
  const halfHardy = frostClass === 'half-hardy' && hasOdds(climate);
  return [
    byClass,
    ...(halfHardy ? oddsLimit(climate, ask, HALF_HARDY_PERCENT, ahead) : []),
    ...hardNightLimit(climate, ask),
  ];
}

/** Whether the odds of a freeze were counted or published; those of two dates or of monthly means are assumed. */
export function hasOdds({ basis }: Climate): boolean {
  return basis !== 'frost-dates' && basis !== 'monthly-normals';
}

function classLimit(climate: Climate, { crop, how }: FirstDayAsk, freeze: Day): Limit {
  const { fromWeeks } = firstWeeks(crop, how) ?? NO_WEEKS;
  const day = weeksFrom(freeze, fromWeeks);
  const field = how === 'set-out' && crop.firstSetOutWeeks !== undefined ? 'firstSetOutWeeks' : 'firstSowWeeks';
  const known = hasOdds(climate) ? {} : { alone: 'weeks' };
  const saw = { crop: crop.name.toLowerCase(), weeks: fromWeeks, freeze, ...known };
  return { day, reason: { rule: 'plant.class', saw, limit: day, source: originOf(crop, field) } };
}

function oddsLimit(climate: Climate, { crop, season }: FirstDayAsk, percent: number, ahead: number): Limit[] {
  const limitF = SPRING_FREEZE_F[crop.frostClass];
  const safe = freezeDay(climate, { event: 'last-spring', limitF, season, chancePercent: percent });
  if (safe === undefined) return [];
  const day = addDays(safe, -ahead);
  const saw = { crop: crop.name.toLowerCase(), percent, safe, days: ahead, tempC: celsius(limitF) };
  return [{ day, reason: { rule: 'plant.odds', saw, limit: day, source: "the garden's climate" } }];
}

/** Hardy plants bear frost, but not a hard night soon after they come out; seed and crowns sit it out in the ground. */
function hardNightLimit(climate: Climate, { crop, how, season }: FirstDayAsk): Limit[] {
  if (how === 'sow' || crop.frostClass !== 'hardy' || isPermanent(crop)) return [];
  const day = lastHardNight(climate, season);
  if (day === undefined) return [];
  const saw = { crop: crop.name.toLowerCase(), tempC: HARD_NIGHT_C };
  return [{ day, reason: { rule: 'plant.hard-night', saw, limit: day, source: "the garden's climate" } }];
}

/** The end of a class's weeks, for kinds that modelled soil is not believed to hold back beyond it. */
function classEnd(climate: Climate, { crop, how, season }: FirstDayAsk, behind: number): Day | undefined {
  const warm = crop.frostClass === 'tender' || crop.frostClass === 'very-tender' || crop.maturityFrom === 'crown';
  const freeze = medianFreeze(usualOf(climate), 'last-spring', season);
  const weeks = firstWeeks(crop, how);
  return warm && freeze !== undefined && weeks !== undefined
    ? addDays(weeksFrom(freeze, weeks.toWeeks), behind)
    : undefined;
}

/** Days by which this season's soil, with its weather so far, warms later than in the record's seasons. */
function daysBehind(climate: Climate, { season, tempC, day }: { season: number; tempC: number; day: Day }): number {
  const usual = soilWarmOdds(usualOf(climate), { season, tempC }).median;
  return usual === undefined ? 0 : Math.max(0, daysBetween(usual, day));
}

/**
 * Two freeze dates say nothing of the soil: there the class's weeks stand alone, and the gardener feels the soil.
 *
 * The soil reckoned from air runs behind measured beds as it nears 15 °C, by weeks against the published charts of Maine
 * and Wisconsin. So it holds tender kinds and dormant crowns back only inside their class's own published weeks; past
 * those a thermometer has the last word, and the task says so. A season whose soil runs behind the usual has those weeks moved
 * by as many days: that lag is this spring's own, and not the model's.
 */
function warmSoil(climate: Climate, ask: FirstDayAsk): Limit | 'any' | 'never' {
  const { crop, season } = ask;
  const { soilMinC } = crop;
  if (soilMinC === undefined || climate.basis === 'frost-dates') return 'any';
  const day = soilWarmOdds(climate, { season, tempC: soilMinC }).median;
  if (day === undefined) return 'never';
  const saw = { crop: crop.name.toLowerCase(), tempC: soilMinC, day };
  const ends = classEnd(climate, ask, daysBehind(climate, { season, tempC: soilMinC, day }));
  if (ends !== undefined && ends < day) {
    return { day: ends, reason: { rule: 'plant.soil-slow', saw, limit: ends, source: originOf(crop, 'soilMinC') } };
  }
  return { day, reason: { rule: 'plant.soil', saw, limit: day, source: originOf(crop, 'soilMinC') } };
}
