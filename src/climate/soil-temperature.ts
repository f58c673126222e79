/**
 * Soil temperature at 10 cm from air temperature.
 *
 * The weighted mean of eleven days of air, today 11 parts and ten days ago 1, is pulled a fifth of the way to the
 * year's mean, and five sixths of the way under snow (Biome-BGC, agro:S30). Soil under snow is held to 1 °C all the
 * same: the year's mean lies deep below a bed, and melting snow is at 0 °C. Bare soil: mulch, shade and a raised bed's
 * sides are not taken into account.
 */
import type { Day } from '../measures/days.ts';
import { airNorms, yearlyMeanAirC } from './air.ts';
import { type Climate, DAYS_IN_SEASON, LAST_SPRING_INDEX, type SeasonWeather } from './climate.ts';
import { countedOdds } from './counted-odds.ts';
import { SOIL_WARM_SPREAD_DAYS } from './fitted.ts';
import { MISSING_DAYS_ALLOWED } from './freeze-record.ts';
import { usualOf } from './logged.ts';
import { holderOf, membersFor } from './members.ts';
import type { Odds } from './odds.ts';
import { normalQuantile } from './quantiles.ts';
import { memory } from './remembered.ts';
import { dayOfIndex, seasonIndex } from './season.ts';
import { dayMeanC, daysAt } from './season-weather.ts';
import { liesSnow, type SurfaceCourse, surfaceCourses } from './surface.ts';

/** Days of air the soil remembers (agro:S30). */
const MEMORY_DAYS = 11;

/** How far soil is pulled from the air's mean to the year's, 0–1, bare and under snow (agro:S30). */
const PULL_TO_YEAR = { bare: 0.2, snow: 0.83 } as const;

/** Warmest that soil under snow is taken to be, °C. House default: snow keeps it near 0 °C. */
const WARMEST_UNDER_SNOW_C = 1;

/** Days in a row the soil must hold a temperature to be called warm. House default. */
const WARM_RUN_DAYS = 7;

/**
 * Soil temperature of each day of a run of daily mean air temperatures, °C. Days missing among the eleven are left out
 * of the weighting; a day with more than five of them missing has no soil temperature, as have the first days of the
 * run.
 *
 * @param snow whether snow lies, day by day; none where left out
 */
export function soilTempSeries(
  airC: readonly (number | undefined)[],
  yearlyMeanC: number,
  snow: readonly boolean[] = [],
): (number | undefined)[] {
  return airC.map((_, today) => {
    let [sum, weights, missing] = [0, 0, 0];
    for (let ago = 0; ago < MEMORY_DAYS; ago += 1) {
      const meanC = airC[today - ago];
      if (meanC === undefined) missing += 1;
      else {
        sum += (MEMORY_DAYS - ago) * meanC;
        weights += MEMORY_DAYS - ago;
      }
    }
    return missing > MISSING_DAYS_ALLOWED ? undefined : pulled(sum / weights, yearlyMeanC, snow[today] ?? false);
  });
}

function pulled(airC: number, yearlyMeanC: number, snow: boolean): number {
  const soilC = airC + (snow ? PULL_TO_YEAR.snow : PULL_TO_YEAR.bare) * (yearlyMeanC - airC);
  return snow ? Math.min(soilC, WARMEST_UNDER_SNOW_C) : soilC;
}

/** Usual soil temperature at 10 cm on a day, °C. */
export function soilTempNormC(climate: Climate, day: Day): number {
  const norm = soilNorms(climate)[seasonIndex(climate.seasonTurn, day) - 1];
  if (norm === undefined) throw new RangeError(`No usual soil temperature for ${day}: not a real date.`);
  return norm;
}

const courses = new WeakMap<Climate, readonly (number | undefined)[]>();

function soilNorms(given: Climate): readonly (number | undefined)[] {
  const climate = usualOf(given);
  const known = courses.get(climate);
  if (known) return known;
  const airC = airNorms(climate).map(({ meanC }) => meanC);
  const twoYears = soilTempSeries([...airC, ...airC], yearlyMeanAirC(climate));
  const course = twoYears.slice(DAYS_IN_SEASON);
  courses.set(climate, course);
  return course;
}

/**
 * The first day of spring from which the soil holds a temperature for seven days. With a daily record each season is
 * looked at; one with more than five days missing before the day is left out. Without one it is the day the usual soil
 * passes the temperature, with the measured spread {@link SOIL_WARM_SPREAD_DAYS}. Where spring never gets there, no
 * day.
 */
export function soilWarmOdds(climate: Climate, ask: { season: number; tempC: number }): Odds {
  return warmOdds(climate, `${ask.season}/${ask.tempC}`, () => workedWarmOdds(climate, ask));
}

/** Every cover of every bed asks after the same few. */
const warmOdds = memory<Climate, string, Odds>();

function workedWarmOdds(climate: Climate, { season, tempC }: { season: number; tempC: number }): Odds {
  const dayAt = (index: number): Day => dayOfIndex(climate.seasonTurn, season, index);
  if (climate.seasons.length === 0) return oddsFromNorm(climate, tempC, dayAt);
  const found = warmIndices(climate, { season, tempC });
  const indices = found.filter((index) => index !== 'never').sort((a, b) => a - b);
  return countedOdds(indices, found.length, dayAt);
}

/** Index of the warm day in each member of a season that can tell, oldest first; `never` where spring stays cold. */
export function warmIndices(
  climate: Climate,
  { season, tempC }: { season: number; tempC: number },
): (number | 'never')[] {
  return warmIndexByMember(climate, { season, tempC }).filter((index) => index !== 'unknown');
}

/** The same for every member, `unknown` where it cannot tell. */
export function warmIndexByMember(climate: Climate, { season, tempC }: { season: number; tempC: number }): WarmIndices {
  const courses = soilCourses(climate, season);
  return warmed(courses, tempC, () => courses.map((soilC) => warmIndex(soilC, tempC)));
}

type WarmIndices = readonly (number | 'never' | 'unknown')[];

/** Many beds ask after the same warmth. */
const warmed = memory<readonly SoilCourse[], number, WarmIndices>();

type SoilCourse = readonly (number | undefined)[];

const soils = memory<Climate, number | 'any', readonly SoilCourse[]>();

/** Soil temperature of each member of a season, oldest first, by season index − 1. */
export function soilCourses(climate: Climate, season: number): readonly SoilCourse[] {
  const { holder, season: name } = holderOf(climate, season);
  return soils(holder, name, () => {
    const before = new Map(membersFor(climate, season - 1).map((member) => [member.season, member]));
    const surfaces = surfaceCourses(climate, season);
    return membersFor(climate, season).map((member, i) =>
      memberSoil(climate, [before.get(member.season - 1), member], surfaces[i] ?? []),
    );
  });
}

/** @param surface two years of days, the season before and the season */
function memberSoil(
  climate: Climate,
  [before, season]: readonly [SeasonWeather | undefined, SeasonWeather],
  surface: SurfaceCourse,
): SoilCourse {
  const meansOf = (weather: SeasonWeather): (number | undefined)[] =>
    Array.from({ length: DAYS_IN_SEASON }, (_, i) => dayMeanC(daysAt(climate.seasonTurn, weather, i + 1)[0] ?? {}));
  const lead = before ? meansOf(before).slice(1 - MEMORY_DAYS) : [];
  const airC = [...lead, ...meansOf(season)];
  const snow = surface.slice(-airC.length).map(liesSnow);
  return soilTempSeries(airC, yearlyMeanAirC(climate), snow).slice(lead.length);
}

function warmIndex(soilC: readonly (number | undefined)[], tempC: number): number | 'never' | 'unknown' {
  const first = firstWarmRun(soilC, tempC);
  const missing = soilC.slice(0, first ?? LAST_SPRING_INDEX).filter((soil) => soil === undefined).length;
  return missing > MISSING_DAYS_ALLOWED ? 'unknown' : (first ?? 'never');
}

function firstWarmRun(soilC: readonly (number | undefined)[], tempC: number): number | undefined {
  let warmDays = 0;
  for (let at = 0; at < LAST_SPRING_INDEX - 1 + WARM_RUN_DAYS; at += 1) {
    const soil = soilC[at];
    warmDays = soil !== undefined && soil >= tempC ? warmDays + 1 : 0;
    if (warmDays === WARM_RUN_DAYS) return at - WARM_RUN_DAYS + 2;
  }
  return undefined;
}

function oddsFromNorm(climate: Climate, tempC: number, dayAt: (index: number) => Day): Odds {
  const index = firstWarmRun(soilNorms(climate), tempC);
  if (index === undefined) return { shareOfYears: 0, years: 0 };
  const reach = normalQuantile(0.9) * SOIL_WARM_SPREAD_DAYS;
  return { early: dayAt(index - reach), median: dayAt(index), late: dayAt(index + reach), shareOfYears: 1, years: 0 };
}
