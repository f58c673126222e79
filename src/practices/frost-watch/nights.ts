/**
 * The nights somebody told of or logged. For one evening the latest word counts, and a measured low answers an expected one.
 */
import type { ColdNight, Garden, Place } from '../../garden/garden.ts';
import { type ToldNight, toldNights } from '../../garden/told-nights.ts';

/** The lows expected, by evening, the latest word for each. */
export function expectedNights(garden: Garden): ToldNight[] {
  return latestOfEach(toldNights(garden), 'expected');
}

/** The lows measured, by evening, the latest word for each. */
export function measuredNights(garden: Garden): ToldNight[] {
  return latestOfEach(toldNights(garden), 'measured');
}

function latestOfEach(nights: readonly ToldNight[], how: ColdNight['how']): ToldNight[] {
  const told = nights.filter((night) => night.how === how);
  return [...new Map(told.map((night) => [night.evening, night])).values()].sort((a, b) =>
    a.evening < b.evening ? -1 : 1,
  );
}

/**
 * The low to expect over the beds: a forecast is made for the area, so a cold pocket takes its own degrees off. Those
 * of a warm wall are not put on, because a cover too many costs little and one too few a crop. House default.
 */
export function lowOverBeds({ lowC }: ColdNight, { tempOffsetC }: Place): number {
  return lowC + Math.min(0, tempOffsetC);
}
