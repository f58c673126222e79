/**
 * When the soil of a bed can be worked: the first day with snow gone, thawed and the top layer drained.
 */
import type { Day } from '../measures/days.ts';
import type { Climate } from './climate.ts';
import { countedOdds } from './counted-odds.ts';
import { MISSING_DAYS_ALLOWED } from './freeze-record.ts';
import { type GroundCourse, type GroundDay, groundCourses } from './ground.ts';
import type { Odds } from './odds.ts';
import { dayOfIndex, seasonIndex, seasonOf } from './season.ts';
import { warmIndexByMember } from './soil-temperature.ts';
import type { SoilClass } from './top-layer.ts';

type Found = number | 'never' | 'unknown';

/**
 * The first fit day from a day on, over the members of the ensemble, looked for to the end of the season. A member with
 * more than five unknown days on the way is left out.
 *
 * @returns nothing where the climate has no daily record with rain in it
 */
export function fitToWorkOdds(climate: Climate, from: Day, soil: SoilClass): Odds | undefined {
  const season = seasonOf(climate.seasonTurn, from);
  const start = seasonIndex(climate.seasonTurn, from);
  const courses = groundCourses(climate, season, soil);
  return oddsOf(
    climate,
    season,
    courses.map((course) => firstFit(course, start)),
  );
}

/**
 * The first day of spring on which the soil is fit to work and holds a temperature: cold ground that happens to be dry
 * in a thaw of winter is no spring.
 *
 * @returns nothing where the climate has no daily record with rain in it
 */
export function springWorkOdds(
  climate: Climate,
  { season, tempC, soil }: { season: number; tempC: number; soil: SoilClass },
): Odds | undefined {
  const warm = warmIndexByMember(climate, { season, tempC });
  const courses = groundCourses(climate, season, soil);
  const found = courses.map((course, member): Found => {
    const start = warm[member] ?? 'unknown';
    return typeof start === 'number' ? firstFit(course, start) : start;
  });
  return oddsOf(climate, season, found);
}

function oddsOf(climate: Climate, season: number, found: readonly Found[]): Odds | undefined {
  if (found.length === 0) return undefined;
  const told = found.filter((index) => index !== 'unknown');
  const indices = told.filter((index) => index !== 'never').sort((a, b) => a - b);
  return countedOdds(indices, told.length, (index) => dayOfIndex(climate.seasonTurn, season, index));
}

function firstFit(course: GroundCourse, start: number): Found {
  let missing = 0;
  for (let index = start; index <= course.length; index += 1) {
    const day = course[index - 1];
    if (!day?.known) missing += 1;
    if (missing > MISSING_DAYS_ALLOWED) return 'unknown';
    if (day?.known && day.state === 'fit') return index;
  }
  return 'never';
}

/** The commonest state of the ground on a day over the members, and the share of them in which it is so. */
export function groundOn(
  climate: Climate,
  day: Day,
  soil: SoilClass,
): { state: GroundDay['state']; share: number } | undefined {
  const at = seasonIndex(climate.seasonTurn, day) - 1;
  const days = groundCourses(climate, seasonOf(climate.seasonTurn, day), soil)
    .flatMap((course) => course[at] ?? [])
    .filter(({ known }) => known);
  const counts = STATES.map((state) => ({
    state,
    share: days.filter((row) => row.state === state).length / days.length,
  }));
  return days.length === 0 ? undefined : counts.reduce((most, row) => (row.share > most.share ? row : most));
}

const STATES: readonly GroundDay['state'][] = ['snow', 'frozen', 'soaked', 'wet', 'fit'];
