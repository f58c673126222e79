/**
 * When bare ground is mulched: before the ground freezes where it would lie open over winter, else as soon as it is
 * free, where it lies open long enough and spring no longer has to warm it.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { soilWarmOdds } from '../../climate/soil-temperature.ts';
import { addDays, clampDay, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { soonest } from '../bed-timeline.ts';
import type { Window } from '../draft.ts';
import type { PracticeInput, Uncovered } from '../practice.ts';
import { midsummerOf, midwinterAfter } from '../seasons.ts';
import { WARM_SOIL_C } from './warm-soil.ts';

/** Weeks before the ground freezes from which a bed that is free waits for autumn's leaves. House default. */
const LEAF_WEEKS = 8;
/** Weeks before the ground freezes at which a winter mulch is best laid: leaves are down, the soil still open. House default. */
const BEST_WEEKS = 2;
/** Days in which bare ground is covered once it is free. House default. */
const OPEN_DAYS = 14;
/** Days after a bed is free that the work is best done. House default. */
const AFTER_CLEARING_DAYS = 3;
/** Days a bed must lie open in the growing season to be worth a mulch. House default. */
export const LEAST_BARE_DAYS = 28;

/** A time to mulch bare ground. */
export interface BareWindow {
  window: Window;
  /** The season whose crops it keeps the ground for. */
  season: number;
  /** The day the ground begins to freeze, where the mulch is for winter. */
  freeze?: Day;
  /** Whether it is laid in autumn for winter, so that it can wait for the compost of that time. */
  inAutumn: boolean;
  /** Days it would lie open, where it is not. */
  days?: number;
}

/**
 * The times to mulch one span of bare ground, one for each winter it lies open, or one in the growing season.
 */
export function bareWindows(input: PracticeInput, { from, to, onResidue, inPlaceOf }: Uncovered): BareWindow[] {
  const { climate, garden, until } = input;
  const start = latestOf(from ?? garden.startedOn, garden.startedOn);
  if (inPlaceOf !== undefined) return [winterAhead(input, start, to) ?? atOnce(input, start, to)];
  const winters: BareWindow[] = [];
  for (let free = start; free <= until; free = addDays(midwinterAfter(climate, free), 1)) {
    const winter = winterAhead(input, free, to);
    if (winter !== undefined) winters.push(winter);
  }
  if (winters.length > 0 || onResidue || to === undefined || midwinterAfter(climate, start) < to) return winters;
  const soon = atOnce(input, latestOf(start, warmed(input, start)), to);
  return (soon.days ?? 0) < LEAST_BARE_DAYS ? [] : [soon];
}

/** The day spring no longer needs the sun on the soil: the day it is warm, or midsummer where that is sooner. */
function warmed({ climate }: PracticeInput, day: Day): Day {
  const season = seasonOf(climate.seasonTurn, day);
  const midsummer = midsummerOf(climate, season);
  return soonest(soilWarmOdds(climate, { season, tempC: WARM_SOIL_C }).median, midsummer) ?? midsummer;
}

/** Before the next winter, where the ground still lies open then and a hard freeze is known. */
function winterAhead(input: PracticeInput, start: Day, to: Day | undefined): BareWindow | undefined {
  const { climate } = input;
  if (to !== undefined && midwinterAfter(climate, start) >= to) return undefined;
  const season = seasonOf(climate.seasonTurn, start);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 24, season, chancePercent: 50 });
  if (freeze === undefined) return undefined;
  const free = latestOf(start, warmed(input, start));
  const inAutumn = free >= addDays(freeze, -7 * LEAF_WEEKS);
  const latest = latestOf(addDays(free, OPEN_DAYS), ...(inAutumn ? [freeze] : []));
  const best = inAutumn ? addDays(freeze, -7 * BEST_WEEKS) : free;
  const preferred = clampDay(latestOf(best, addDays(free, AFTER_CLEARING_DAYS)), free, latest);
  return { window: { earliest: free, preferred, latest }, season: season + 1, freeze, inAutumn };
}

/** As soon as the ground is free. */
export function atOnce({ climate }: PracticeInput, free: Day, to: Day | undefined): BareWindow {
  const latest = soonest(addDays(free, OPEN_DAYS), to && latestOf(free, addDays(to, -1))) ?? free;
  const window = { earliest: free, preferred: earliestOf(addDays(free, AFTER_CLEARING_DAYS), latest), latest };
  const season = seasonOf(climate.seasonTurn, free);
  return { window, season, inAutumn: false, ...(to === undefined ? {} : { days: daysBetween(free, to) }) };
}
