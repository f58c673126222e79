/**
 * A stretch of days as this season goes, beside what the record's seasons were like on the same days.
 */
import { type Day, eachDay } from '../measures/days.ts';
import { airTempNormC } from './air.ts';
import { type Climate, DAYS_IN_SEASON } from './climate.ts';
import { groundCourses } from './ground.ts';
import { usualOf } from './logged.ts';
import { quantileType6 } from './quantiles.ts';
import { seasonIndex, seasonOf } from './season.ts';
import { daysAt } from './season-weather.ts';
import { lyingSnowCm } from './snow.ts';
import { surfaceCourses } from './surface.ts';
import type { SoilClass } from './top-layer.ts';

/** Days on either side whose values are taken together with a day's own, so that thirty seasons give a quiet band. House default. */
export const POOLED_EACH_SIDE = 3;

/** Days from one to another, both included. */
export interface DaySpan {
  from: Day;
  to: Day;
}

/** What one, five and nine of ten values stay at or below. */
export interface Spread {
  low: number;
  median: number;
  high: number;
}

/** A day's lowest or highest temperature, °C. */
export interface TemperatureDay {
  day: Day;
  /** The mean of the years. */
  normalC: number;
  /** How the record's seasons are spread; absent without a daily record. */
  usual?: Spread;
  /** What was seen, or is expected by a forecast; at most one of the two. */
  seenC?: number;
  expectedC?: number;
}

/** A worked-out amount: in this season's members, and in the record's seasons as they were. */
export interface ModelledDay {
  day: Day;
  now?: Spread;
  usual?: Spread;
}

/** The lowest or the highest temperature of each day. */
export function temperatureCourse(climate: Climate, which: 'tminC' | 'tmaxC', { from, to }: DaySpan): TemperatureDay[] {
  const logged = new Map(climate.logged.map((row) => [row.day, row]));
  return eachDay(from, to).map((day) => {
    const normal = airTempNormC(climate, day);
    const row = logged.get(day);
    const tempC = row?.[which];
    const usual = spreadOf(pooled(climate, which, day));
    return {
      day,
      normalC: which === 'tminC' ? normal.minC : normal.maxC,
      ...(usual === undefined ? {} : { usual }),
      ...(tempC === undefined ? {} : row?.kind === 'expected' ? { expectedC: tempC } : { seenC: tempC }),
    };
  });
}

/** Temperatures of the record's seasons about a day. At midwinter the other end of the same season stands in. */
function pooled({ seasons, seasonTurn }: Climate, which: 'tminC' | 'tmaxC', day: Day): number[] {
  const at = seasonIndex(seasonTurn, day) - 1;
  const indices = Array.from(
    { length: 2 * POOLED_EACH_SIDE + 1 },
    (_, i) => ((at + i - POOLED_EACH_SIDE + DAYS_IN_SEASON) % DAYS_IN_SEASON) + 1,
  );
  return seasons
    .flatMap((season) => indices.flatMap((index) => daysAt(seasonTurn, season, index).map((row) => row[which])))
    .filter((tempC) => tempC !== undefined);
}

function spreadOf(values: readonly number[]): Spread | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  return { low: quantileType6(sorted, 0.1), median: quantileType6(sorted, 0.5), high: quantileType6(sorted, 0.9) };
}

/** Depth of the snow lying at the end of each day, cm. Empty where the climate has no daily record with rain in it. */
export function snowCourse(climate: Climate, span: DaySpan): ModelledDay[] {
  return modelled(climate, span, (given, season, at) =>
    surfaceCourses(given, season).flatMap((course) => {
      // A course holds the season before it too.
      const day = course[at + DAYS_IN_SEASON];
      return day?.known ? [lyingSnowCm(day.snowWaterMm)] : [];
    }),
  );
}

/** Water missing from a soil's top layer at the end of each day, mm; negative while it drains. Empty as above. */
export function topWaterCourse(climate: Climate, soil: SoilClass, span: DaySpan): ModelledDay[] {
  return modelled(climate, span, (given, season, at) =>
    groundCourses(given, season, feltWhere(climate, given, soil)).flatMap((course) =>
      course[at]?.known ? [course[at].depletionMm] : [],
    ),
  );
}

/** Share of this season's members, and of the record's seasons, in which a soil is fit to work on a day, 0–1. */
export interface FitDay {
  day: Day;
  now?: number;
  usual?: number;
}

/** How likely a soil is fit to work, day by day. Empty where the climate has no daily record with rain in it. */
export function fitCourse(climate: Climate, soil: SoilClass, span: DaySpan): FitDay[] {
  return counted(
    climate,
    span,
    (given, season, at) =>
      groundCourses(given, season, feltWhere(climate, given, soil)).flatMap((course) =>
        course[at]?.known ? [course[at].state === 'fit' ? 1 : 0] : [],
      ),
    meanOrNothing,
  );
}

/** The soil as this season's handfuls told it; past seasons know nothing of them. */
function feltWhere(climate: Climate, given: Climate, { texture, raised, handfuls = [] }: SoilClass): SoilClass {
  return given === climate && given !== usualOf(climate) ? { texture, raised, handfuls } : { texture, raised };
}

function meanOrNothing(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Values of the members of a season at a place of it, one a member that knows. */
type ValuesAt = (climate: Climate, season: number, at: number) => number[];

function modelled(climate: Climate, span: DaySpan, valuesAt: ValuesAt): ModelledDay[] {
  return counted(climate, span, valuesAt, spreadOf);
}

/** Each day told of this season, where any of its weather was logged, and of the record's seasons. */
function counted<Told>(
  climate: Climate,
  { from, to }: DaySpan,
  valuesAt: ValuesAt,
  tell: (values: readonly number[]) => Told | undefined,
): { day: Day; now?: Told; usual?: Told }[] {
  const { seasonTurn } = climate;
  const unlogged = usualOf(climate);
  const days = eachDay(from, to).map((day) => {
    const [season, at] = [seasonOf(seasonTurn, day), seasonIndex(seasonTurn, day) - 1];
    const now = unlogged === climate ? undefined : tell(valuesAt(climate, season, at));
    const usual = tell(valuesAt(unlogged, season, at));
    return { day, ...(now === undefined ? {} : { now }), ...(usual === undefined ? {} : { usual }) };
  });
  return days.some(({ usual }) => usual !== undefined) ? days : [];
}
