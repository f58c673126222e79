/**
 * What stands in a bed when: its crops one after another, and the spans between them with no crop.
 */

import type { Climate, FreezeLimitF } from '../climate/climate.ts';
import { freezeDay } from '../climate/freeze.ts';
import { seasonOf } from '../climate/season.ts';
import type { Garden, Planting } from '../garden/garden.ts';
import { inBed } from '../garden/in-bed.ts';
import { daysLate } from '../garden/last-harvest.ts';
import { thereFrom } from '../garden/planned-beds.ts';
import type { ToldNight } from '../garden/told-nights.ts';
import type { Span } from '../handbook/shapes/row.ts';
import type { Vegetable } from '../handbook/shapes/vegetable.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import { addDays, type Day, earliestOf, latestOf } from '../measures/days.ts';
import { frozenBy, type NightsTold } from './frozen.ts';
import { countedFromSpring, liftingSeason, type Season } from './over-winter.ts';

/** A crop's time in its bed. */
export interface CropSpan {
  planting: Planting;
  crop: Vegetable;
  from: Day;
  /** The last harvest: stated, or worked out; absent for a permanent bed. */
  to?: Day;
  /** Where the end comes from. */
  end: 'happened' | 'frozen' | 'stated' | 'days to maturity' | 'first freeze' | 'permanent';
  /** The measured night that ended it, where one did. */
  frozen?: ToldNight;
  /** The freeze that ends it, where a freeze does. */
  freezeLimitF?: FreezeLimitF;
  /** For a crop that stands through winter: the day of spring its days to maturity are counted from. */
  countedFrom?: Day;
  /** The days of summer it is lifted in, where those come before its days are full: for garlic planted late. */
  liftedIn?: Season;
}

/** A span of days in which a bed has no crop. */
export interface Gap {
  bedId: string;
  /** The day after the crop before it ended, or the day a new bed is there; absent where nothing was ever grown. */
  from?: Day;
  before?: CropSpan;
  /** The day the next crop goes in; absent where nothing is planned. */
  to?: Day;
  next?: CropSpan;
}

/** Days by which plants raised indoors are ahead of seed sown in the bed. House default. */
const RAISED_AHEAD_DAYS = 14;

/** The freeze whose median first date ends a crop's season, by how much cold it stands (veg:V49; hardy from memory). */
const ENDING_FREEZE_F: Readonly<Record<Vegetable['frostClass'], FreezeLimitF>> = {
  'very-tender': 32,
  tender: 32,
  'half-hardy': 28,
  hardy: 24,
};

/** Whether a crop never leaves its bed; the harvests of one season end nothing. */
export function isPermanent(crop: Vegetable): boolean {
  return crop.rotationGroup === 'perennial' || crop.rotationYears >= 99;
}

/** The season a crop is counted to: that of its planting, or the next for what goes in in autumn to grow in spring. */
export function cropYear({ crop, from }: Pick<CropSpan, 'crop' | 'from'>, climate: Climate): number {
  return seasonOf(climate.seasonTurn, from) + (crop.maturityFrom === 'fall-set' ? 1 : 0);
}

/** Years from one crop of a bed to a later one, by the seasons they are counted to: what rotation's waits are held against. */
export function seasonsBetween(before: CropSpan, next: CropSpan, climate: Climate): number {
  return cropYear(next, climate) - cropYear(before, climate);
}

/** A crop's span in its bed. */
function cropSpan(planting: Planting, climate: Climate): CropSpan {
  const crop = vegetableById(planting.cropId);
  const from = planting.start.day;
  const { lastHarvest } = planting;
  if (isPermanent(crop)) return { planting, crop, from, end: 'permanent' };
  if (lastHarvest?.happened) return { planting, crop, from, to: lastHarvest.day, end: 'happened' };
  if (lastHarvest) return { planting, crop, from, to: endMeant(planting, lastHarvest.day, climate), end: 'stated' };
  const days = crop.maturityDays.high + daysAhead(planting, crop) + middle(crop.harvestSpanDays);
  const ripe = addDays(from, days);
  const span = { planting, crop, from, end: 'days to maturity' } as const;
  const liftedIn = liftingSeason(crop, from, climate);
  if (liftedIn !== undefined && liftedIn.to < ripe) return { ...span, to: liftedIn.to, liftedIn };
  const killed = killedByFreeze(crop, from, climate);
  const countedFrom = countedFromSpring(planting, crop, climate, { ripe, first: firstRipe(span), killed: killed?.day });
  const to = addDays(countedFrom ?? from, days);
  if (killed === undefined || killed.day >= to || killed.day < (countedFrom ?? from)) {
    return { ...span, to, ...(countedFrom === undefined ? {} : { countedFrom }) };
  }
  return { ...span, to: killed.day, end: 'first freeze', freezeLimitF: killed.limitF };
}

/**
 * A planned last harvest of a crop that went in later than it was meant to: as many days later, but not beyond the freeze
 * that ends the crop. One that went in early is harvested to the end as planned.
 */
function endMeant({ cropId, start }: Planting, planned: Day, climate: Climate): Day {
  const late = daysLate(start);
  if (late === 0) return planned;
  const killed = killedByFreeze(vegetableById(cropId), start.day, climate);
  const moved = addDays(planned, late);
  return killed === undefined ? moved : latestOf(planned, earliestOf(moved, killed.day));
}

/** The day the first of a crop may be ripe: its quickest kinds, in good weather. */
export function firstRipe(span: Pick<CropSpan, 'planting' | 'crop' | 'from' | 'liftedIn'>): Day {
  const { planting, crop, from, liftedIn } = span;
  const ripe = addDays(from, crop.maturityDays.low + daysAhead(planting, crop));
  return earliestOf(ripe, liftedIn?.from ?? ripe);
}

/** Days to add to the days to maturity where those are counted from the other way of starting the crop. */
function daysAhead({ start }: Planting, crop: Vegetable): number {
  if (start.how === 'sow' && crop.maturityFrom === 'transplant') return 7 * middle(crop.indoorWeeks ?? NO_WEEKS);
  if (start.how === 'set-out' && crop.maturityFrom === 'direct') return -RAISED_AHEAD_DAYS;
  return 0;
}

const NO_WEEKS: Span = { low: 0, high: 0 };

/** The median first freeze a crop does not outlive; nothing for one that goes in after autumn has begun to freeze. */
export function killedByFreeze(
  crop: Vegetable,
  from: Day,
  climate: Climate,
): { day: Day; limitF: FreezeLimitF } | undefined {
  if (crop.maturityFrom === 'fall-set') return undefined;
  const season = seasonOf(climate.seasonTurn, from);
  const firstDay = (limitF: FreezeLimitF) =>
    freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
  const limitF = ENDING_FREEZE_F[crop.frostClass];
  const [light, day] = [firstDay(32), firstDay(limitF)];
  return day === undefined || day <= from || (light !== undefined && from >= light) ? undefined : { day, limitF };
}

function middle({ low, high }: Span): number {
  return Math.round((low + high) / 2);
}

/** A crop's span as it ended on the morning after a night that ended it, where that comes before its end. */
function frozenSpan(garden: NightsTold, span: CropSpan): CropSpan {
  const { planting, crop, to, end } = span;
  if (end === 'happened' || end === 'permanent' || to === undefined) return span;
  const frozen = frozenBy(garden, planting, crop);
  const morning = frozen && addDays(frozen.evening, 1);
  if (frozen === undefined || morning === undefined || morning >= to) return span;
  const { freezeLimitF: _freezeLimitF, liftedIn: _liftedIn, ...rest } = span;
  return { ...rest, to: morning, end: 'frozen', frozen };
}

/** A bed's crops in the order they go in. */
export function cropSpans(garden: Pick<Garden, 'plantings'> & NightsTold, bedId: string, climate: Climate): CropSpan[] {
  const spans = inBed(garden.plantings, bedId)
    .map((planting) => frozenSpan(garden, cropSpan(planting, climate)))
    .sort((a, b) => (a.from === b.from ? (a.planting.id < b.planting.id ? -1 : 1) : a.from < b.from ? -1 : 1));
  return spans.map((span) => removed(span, spans));
}

/** A lasting crop counts as taken out where its last harvest is past and something else went in after it. */
function removed(span: CropSpan, spans: readonly CropSpan[]): CropSpan {
  const { lastHarvest } = span.planting;
  if (span.end !== 'permanent' || !lastHarvest?.happened) return span;
  const replaced = spans.some(({ from }) => from > lastHarvest.day);
  return replaced ? { ...span, to: lastHarvest.day, end: 'happened' } : span;
}

/**
 * The spans of a bed with no crop, from `since` on. Crops that overlap count as one occupation, which ends with the
 * last of them.
 */
export function gapsOf(garden: Garden, bedId: string, climate: Climate, since: Day): Gap[] {
  const spans = cropSpans(garden, bedId, climate);
  const bed = garden.beds.find(({ id }) => id === bedId);
  const there = bed && thereFrom(bed);
  const gaps: Gap[] = [];
  let last: CropSpan | undefined;
  for (const next of spans) {
    const ended = last === undefined ? (there ?? '') < next.from : last.to !== undefined && last.to < next.from;
    if (ended && next.from > since) gaps.push(gapBetween(bedId, last, next, there));
    if (last === undefined || endsLater(next, last)) last = next;
  }
  if (last === undefined || last.to !== undefined) gaps.push(gapBetween(bedId, last, undefined, there));
  return gaps;
}

function endsLater(a: CropSpan, b: CropSpan): boolean {
  return b.to !== undefined && (a.to === undefined || a.to > b.to);
}

function gapBetween(
  bedId: string,
  before: CropSpan | undefined,
  next: CropSpan | undefined,
  there: Day | undefined,
): Gap {
  const opened = there === undefined ? {} : { from: there };
  return {
    bedId,
    ...(before?.to === undefined ? opened : { before, from: addDays(before.to, 1) }),
    ...(next === undefined ? {} : { next, to: next.from }),
  };
}

/** The next crop to go into a bed after a day. */
export function nextCrop(garden: Garden, bedId: string, climate: Climate, after: Day): CropSpan | undefined {
  return cropSpans(garden, bedId, climate).find((span) => span.from > after);
}

/** Floor area of a bed, m². */
export function areaOf(bed: { lengthM: number; widthM: number }): number {
  return bed.lengthM * bed.widthM;
}

/** The earlier of two days, either of which may be absent. */
export function soonest(a: Day | undefined, b: Day | undefined): Day | undefined {
  if (a === undefined) return b;
  return b === undefined ? a : earliestOf(a, b);
}
