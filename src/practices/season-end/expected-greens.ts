/**
 * The greens a household brings to its pile in a year, and the browns they ask for.
 */
import { meanAirStaysAbove } from '../../climate/air.ts';
import type { Climate } from '../../climate/climate.ts';
import type { Household } from '../../garden/household.ts';
import { BROWNS_TO_GREENS } from '../../handbook/feedstocks.ts';
import { daysBetween } from '../../measures/days.ts';
import { inTens, scrapsOf } from './scraps.ts';

/** Days a stock of browns is to last: to the next fall of leaves. */
export const YEAR_DAYS = 365;
/** Mean air above which a lawn is mown every week, °C. House default. */
const MOWN_ABOVE_C = 10;

/** Litres of greens expected in the year after an autumn, and of browns to go with them. */
export interface ExpectedGreens {
  scraps: number;
  clippings: number;
  /** Weeks of mowing the clippings come from. */
  mownWeeks: number;
  coverCuts: number;
  browns: number;
}

/** What a household expects to bring in the season after one; nothing where nobody said how many eat from the garden. */
export function expectedGreens(household: Household, climate: Climate, season: number): ExpectedGreens | undefined {
  if (household.people === undefined) return undefined;
  const { scraps } = scrapsOf(household.people, YEAR_DAYS);
  const mownWeeks = household.clippingsL ? weeksMown(climate, season + 1) : 0;
  const clippings = inTens((household.clippingsL ?? 0) * mownWeeks);
  const coverCuts = inTens(household.coverCutsL ?? 0);
  return { scraps, clippings, mownWeeks, coverCuts, browns: (scraps + clippings + coverCuts) * BROWNS_TO_GREENS };
}

function weeksMown(climate: Climate, season: number): number {
  const { from, to } = meanAirStaysAbove(climate, { season, tempC: MOWN_ABOVE_C });
  return from === undefined || to === undefined ? 0 : Math.max(0, Math.round(daysBetween(from, to) / 7));
}
