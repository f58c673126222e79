/**
 * Heat that is left to a sowing before the cold that ends its growth.
 */
import type { HeatMethod } from '../handbook/shapes/cover.ts';
import type { Day } from '../measures/days.ts';
import { type Climate, DAYS_IN_SEASON, type FreezeLimitF, type SeasonTurn, type SeasonWeather } from './climate.ts';
import { freezeDay } from './freeze.ts';
import { MISSING_DAYS_ALLOWED, seasonFreeze } from './freeze-record.ts';
import { expectedUnitsOn, type HeatCount, heatUnits } from './heat.ts';
import { usualOf } from './logged.ts';
import { holderOf, membersFor, seenTo } from './members.ts';
import { memory } from './remembered.ts';
import { seasonIndex, seasonOf } from './season.ts';
import { daysAt } from './season-weather.ts';
import { soilCourses } from './soil-temperature.ts';

/** Days that seed lies in soil too cold for it before it counts as lost. House default. */
const WAITS_DAYS = 14;

/** A sowing that wants so much heat before a freeze. */
export interface HeatBefore {
  from: Day;
  /** Soil temperature below which the seed does not sprout, °C. */
  soilMinC?: number;
  /** The freeze that ends the count, °F; and the count. */
  limitF: FreezeLimitF;
  count: HeatCount & { method: Exclude<HeatMethod, 'small-grain'> };
}

/**
 * Heat from sprouting up to the day before the first freeze of autumn, °C·days, one value a member of the ensemble:
 * nothing where the soil is too cold to sprout in for two weeks, `unknown` where more than five days are missing. Empty
 * without a daily record.
 */
export function heatLeftByMember(climate: Climate, ask: HeatBefore): (number | 'unknown')[] {
  const season = seasonOf(climate.seasonTurn, ask.from);
  const start = seasonIndex(climate.seasonTurn, ask.from);
  const sums = sumsOf(climate, season, ask.count);
  const freezes = freezeIndices(climate, season, ask.limitF);
  const soils = ask.soilMinC === undefined ? undefined : soilCourses(climate, season);
  return sums.map((sum, member) => {
    const freeze = freezes[member];
    const up = soils === undefined ? start : sproutIndex(soils[member] ?? [], start, ask.soilMinC ?? 0);
    if (freeze === undefined || freeze === 'unknown' || up === 'unknown') return 'unknown';
    if (up === 'never' || up >= freeze) return 0;
    const missing = (sum.missing[freeze - 1] ?? 0) - (sum.missing[up - 1] ?? 0);
    return missing > MISSING_DAYS_ALLOWED ? 'unknown' : (sum.units[freeze - 1] ?? 0) - (sum.units[up - 1] ?? 0);
  });
}

const usual = memory<Climate, string, Float64Array>();

/**
 * Heat to be expected from a day up to the day before another, °C·days, in a year as it usually is. A 29 February counts for
 * nothing, as in every count by season index.
 */
export function usualHeatBetween(given: Climate, [from, to]: readonly [Day, Day], count: HeatBefore['count']): number {
  if (from >= to) return 0;
  const climate = usualOf(given);
  const sums = usual(climate, `${count.method} ${count.baseC} ${count.upperC}`, () => usualSums(climate, count));
  const seasons = seasonOf(climate.seasonTurn, to) - seasonOf(climate.seasonTurn, from);
  const upTo = (day: Day) => sums[seasonIndex(climate.seasonTurn, day) - 1] ?? 0;
  return upTo(to) - upTo(from) + seasons * (sums[DAYS_IN_SEASON] ?? 0);
}

/** Units up to the end of each index of a season. */
function usualSums(climate: Climate, count: HeatCount): Float64Array {
  const sums = new Float64Array(DAYS_IN_SEASON + 1);
  for (let index = 1; index <= DAYS_IN_SEASON; index += 1) {
    sums[index] = (sums[index - 1] ?? 0) + expectedUnitsOn(climate, index, count);
  }
  return sums;
}

/** Heat usually left from a day to the median freeze of that autumn; nothing where no such freeze is known. */
export function usualHeatLeft(climate: Climate, { from, limitF, count }: HeatBefore): number | undefined {
  const season = seasonOf(climate.seasonTurn, from);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
  return freeze === undefined ? undefined : usualHeatBetween(climate, [from, freeze], count);
}

function sproutIndex(soil: readonly (number | undefined)[], start: number, minC: number): number | 'never' | 'unknown' {
  const days = soil.slice(start - 1, start + WAITS_DAYS);
  const at = days.findIndex((tempC) => tempC !== undefined && tempC >= minC);
  if (at >= 0) return start + at;
  return days.filter((tempC) => tempC === undefined).length > MISSING_DAYS_ALLOWED ? 'unknown' : 'never';
}

/** Units and missing days of a member summed up, by season index: what came up to the end of that day. */
interface Sums {
  units: Float64Array;
  missing: Uint16Array;
}

const summed = memory<Climate, string, readonly Sums[]>();

function sumsOf(climate: Climate, season: number, count: HeatCount): readonly Sums[] {
  const { holder, season: name } = holderOf(climate, season);
  return summed(holder, `${name} ${count.method} ${count.baseC} ${count.upperC}`, () =>
    membersFor(climate, season).map((member) => sumUp(climate.seasonTurn, member, count)),
  );
}

function sumUp(turn: SeasonTurn, member: SeasonWeather, count: HeatCount): Sums {
  const units = new Float64Array(DAYS_IN_SEASON + 1);
  const missing = new Uint16Array(DAYS_IN_SEASON + 1);
  let [sum, gaps, last] = [0, 0, 0];
  for (let index = 1; index <= DAYS_IN_SEASON; index += 1) {
    for (const { tminC, tmaxC } of daysAt(turn, member, index)) {
      if (tminC === undefined || tmaxC === undefined) gaps += 1;
      else last = heatUnits({ tminC, tmaxC }, count);
      sum += last;
    }
    units[index] = sum;
    missing[index] = gaps;
  }
  return { units, missing };
}

const freezing = memory<Climate, string, readonly (number | 'unknown')[]>();

/** Index of the first autumn freeze of each member, moved as the garden asks; the day after the season where none came. */
function freezeIndices(climate: Climate, season: number, limitF: FreezeLimitF): readonly (number | 'unknown')[] {
  const { holder, season: name } = holderOf(climate, season);
  const seen = seenTo(climate, season);
  return freezing(holder, `${name} ${limitF}`, () =>
    membersFor(climate, season).map((member) => {
      const found = seasonFreeze(climate.seasonTurn, member, 'first-autumn', limitF);
      if (found === 'unknown') return found;
      if (found === 'none') return DAYS_IN_SEASON + 1;
      return found <= seen ? found : Math.max(found - climate.frostOffsetDays, seen);
    }),
  );
}
