/**
 * When the beds' autumn work begins, and which gaps between crops it falls into.
 */
import type { Climate } from '../climate/climate.ts';
import { freezeDay } from '../climate/freeze.ts';
import { seasonOf } from '../climate/season.ts';
import { addDays, type Day, latestOf } from '../measures/days.ts';
import type { Gap } from './bed-timeline.ts';

/** Weeks before the median first freeze from which autumn work is done: a summer cover keeps the bed until then. House default. */
const AUTUMN_WEEKS = 8;

/** The days of autumn work in a season: from its beginning to the hard freeze; nothing where no freeze date is known. */
export function autumnWork(climate: Climate, season: number): { from: Day; light: Day; hard: Day } | undefined {
  const frozen = (limitF: 32 | 24): Day | undefined =>
    freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
  const [light, hard] = [frozen(32), frozen(24)];
  if (light === undefined || hard === undefined) return undefined;
  return { from: addDays(light, -7 * AUTUMN_WEEKS), light, hard };
}

/** Whether a gap is open at some time between the beginning of autumn work and the hard freeze. */
export function isOpenInAutumn({ from, to }: Gap, work: { from: Day; hard: Day }): boolean {
  return (from === undefined || from < work.hard) && (to === undefined || to > latestOf(from ?? work.from, work.from));
}

/** Whether the autumn's compost goes on ahead of a crop: the gap before it is open in the autumn it goes in. */
export function isInAfterAutumnWork(climate: Climate, gap: Gap | undefined): boolean {
  if (gap?.to === undefined) return false;
  const work = autumnWork(climate, seasonOf(climate.seasonTurn, gap.to));
  return work !== undefined && gap.to > work.from && isOpenInAutumn(gap, work);
}
