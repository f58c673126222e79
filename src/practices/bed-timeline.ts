/**
 * What stands in a bed when: its crops one after another, and the spans between them with no crop.
 */
import type { Climate } from '../climate/climate.ts';
import { freezeDay } from '../climate/freeze.ts';
import { seasonOf } from '../climate/season.ts';
import type { Garden, Planting } from '../garden/garden.ts';
import type { Vegetable } from '../handbook/shapes.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import { addDays, type Day, earliestOf } from '../measures/days.ts';

/** A crop's time in its bed. */
export interface CropSpan {
  planting: Planting;
  crop: Vegetable;
  from: Day;
  /** The last harvest: stated, or worked out; absent for a permanent bed. */
  to?: Day;
  /** Where the end comes from. */
  end: 'happened' | 'stated' | 'days to maturity' | 'first freeze' | 'permanent';
}

/** A span of days in which a bed has no crop. */
export interface Gap {
  bedId: string;
  /** The day after the crop before it ended; absent where nothing was ever grown. */
  from?: Day;
  before?: CropSpan;
  /** The day the next crop goes in; absent where nothing is planned. */
  to?: Day;
  next?: CropSpan;
}

/** A crop's span in its bed. */
export function cropSpan(planting: Planting, climate: Climate): CropSpan {
  const crop = vegetableById(planting.cropId);
  const from = planting.start.day;
  const { lastHarvest } = planting;
  if (lastHarvest) {
    return { planting, crop, from, to: lastHarvest.day, end: lastHarvest.happened ? 'happened' : 'stated' };
  }
  if (crop.rotationGroup === 'perennial' || crop.rotationYears >= 99) {
    return { planting, crop, from, end: 'permanent' };
  }
  const ripe = addDays(from, crop.maturityDays.high + middle(crop.harvestSpanDays));
  const killed = killedByFreeze(crop, from, climate);
  if (killed !== undefined && killed < ripe) return { planting, crop, from, to: killed, end: 'first freeze' };
  return { planting, crop, from, to: ripe, end: 'days to maturity' };
}

/** The median first autumn freeze after a tender crop went in: it ends there at the latest. */
function killedByFreeze(crop: Vegetable, from: Day, climate: Climate): Day | undefined {
  if (crop.frostClass === 'hardy' || crop.frostClass === 'half-hardy') return undefined;
  const season = seasonOf(climate.seasonTurn, from);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  return freeze !== undefined && freeze > from ? freeze : undefined;
}

function middle({ low, high }: { low: number; high: number }): number {
  return Math.round((low + high) / 2);
}

/** A bed's crops in the order they go in. */
export function cropSpans(garden: Garden, bedId: string, climate: Climate): CropSpan[] {
  return garden.plantings
    .filter((planting) => planting.bedId === bedId)
    .map((planting) => cropSpan(planting, climate))
    .sort((a, b) => (a.from === b.from ? (a.planting.id < b.planting.id ? -1 : 1) : a.from < b.from ? -1 : 1));
}

/**
 * The spans of a bed with no crop, from `since` on. Crops that overlap count as one occupation, which ends with the
 * last of them.
 */
export function gapsOf(garden: Garden, bedId: string, climate: Climate, since: Day): Gap[] {
  const spans = cropSpans(garden, bedId, climate);
  const gaps: Gap[] = [];
  let last: CropSpan | undefined;
  for (const next of spans) {
    const ended = last === undefined || (last.to !== undefined && last.to < next.from);
    if (ended && next.from > since) gaps.push(gapBetween(bedId, last, next));
    if (last === undefined || endsLater(next, last)) last = next;
  }
  if (last === undefined || last.to !== undefined) gaps.push(gapBetween(bedId, last, undefined));
  return gaps;
}

function endsLater(a: CropSpan, b: CropSpan): boolean {
  return b.to !== undefined && (a.to === undefined || a.to > b.to);
}

function gapBetween(bedId: string, before: CropSpan | undefined, next: CropSpan | undefined): Gap {
  return {
    bedId,
    ...(before?.to === undefined ? {} : { before, from: addDays(before.to, 1) }),
    ...(next === undefined ? {} : { next, to: next.from }),
  };
}

/** The next crop to go into a bed on or after a day. */
export function nextCrop(garden: Garden, bedId: string, climate: Climate, after: Day): CropSpan | undefined {
  return cropSpans(garden, bedId, climate).find((span) => span.from >= after);
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
