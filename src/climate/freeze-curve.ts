/**
 * Freeze dates read off the smooth course of the mean minimum.
 *
 * A smooth year never gives a freeze date by crossing 0 °C: single cold nights come long after. So either the course is
 * anchored to a date that is known, or the level it has on such dates is taken from many stations.
 */
import { DAYS_IN_SEASON, type FreezeEvent, type SeasonTurn } from './climate.ts';
import { FREEZE_LEVEL_C } from './fitted.ts';
import { courseAt } from './yearly-curve.ts';

/** The mean minimum of a place over the year. */
export interface MinimumCourse {
  /** Twelve monthly means, °C, January first. */
  tminC: readonly number[];
  turn: SeasonTurn;
}

function minimumAt({ tminC, turn }: MinimumCourse, index: number): number {
  const whole = Math.floor(index);
  const within = (day: number): number => (((day - 1) % DAYS_IN_SEASON) + DAYS_IN_SEASON) % DAYS_IN_SEASON;
  const today = courseAt(tminC, turn, within(whole) + 1);
  return today + (index - whole) * (courseAt(tminC, turn, within(whole + 1) + 1) - today);
}

/**
 * Walks from an index until the course has passed a level.
 *
 * @param step +1 forwards, −1 backwards
 * @returns the index of the crossing, with its fraction; nothing within a year
 */
function crossing(course: MinimumCourse, from: number, step: 1 | -1, levelC: number): number | undefined {
  const above = minimumAt(course, from) > levelC;
  for (let walked = 1; walked <= DAYS_IN_SEASON; walked += 1) {
    const here = from + step * walked;
    const hereC = minimumAt(course, here);
    if (hereC > levelC === above) continue;
    const beforeC = minimumAt(course, here - step);
    return here - step * (1 - (levelC - beforeC) / (hereC - beforeC));
  }
  return undefined;
}

/**
 * The index, beside a known freeze date, on which the mean minimum is some degrees colder or warmer than on that date:
 * the freeze date for a limit so much lower or higher.
 *
 * @param changeC negative for colder
 * @returns nothing where that side of the year never gets so cold or so warm
 */
export function anchoredIndex(
  course: MinimumCourse,
  event: FreezeEvent,
  known: number,
  changeC: number,
): number | undefined {
  if (changeC === 0) return known;
  const towardsWinter = event === 'last-spring' ? -1 : 1;
  const step = changeC < 0 ? towardsWinter : towardsWinter === 1 ? -1 : 1;
  const index = crossing(course, known, step, minimumAt(course, known) + changeC);
  return index === undefined || Math.abs(index - known) > DAYS_IN_SEASON / 2 ? undefined : index;
}

/**
 * The median index of the 0 °C freeze, from monthly means alone: where the mean minimum passes the level it has on
 * that date at other places (see {@link FREEZE_LEVEL_C}).
 *
 * @returns nothing where the year stays on one side of the level, or where the date would fall into another season
 */
export function levelIndex(course: MinimumCourse, event: FreezeEvent): number | undefined {
  const warmestC = Math.max(...course.tminC);
  const { atZero, perDegree } = FREEZE_LEVEL_C[event];
  const levelC = atZero + perDegree * warmestC;
  if (warmestC <= levelC) return undefined;
  const index = crossing(course, warmestIndex(course), event === 'last-spring' ? -1 : 1, levelC);
  return index === undefined || index < 1 || index > DAYS_IN_SEASON ? undefined : index;
}

function warmestIndex(course: MinimumCourse): number {
  let warmest = 1;
  for (let index = 1; index <= DAYS_IN_SEASON; index += 1)
    if (minimumAt(course, index) > minimumAt(course, warmest)) warmest = index;
  return warmest;
}
