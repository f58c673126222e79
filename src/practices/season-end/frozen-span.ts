/**
 * When a bin stands frozen.
 */
import { meanAirStaysAbove } from '../../climate/air.ts';
import type { Climate } from '../../climate/climate.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';

/** Daily mean air below which a small bin freezes and takes in without shrinking, °C. House default: water's own. */
export const FREEZES_BELOW_C = 0;

/** The winter after a season's autumn, as a bin has it. */
export interface FrozenSpan {
  /** The first day whose usual mean is below freezing. */
  from: Day;
  /** The day the usual mean is back at freezing. */
  thaw: Day;
  days: number;
}

/** The span in which a bin is frozen in the usual winter after a season; nothing where winters are milder, or never end. */
export function frozenSpan(climate: Climate, season: number): FrozenSpan | undefined {
  const last = meanAirStaysAbove(climate, { season, tempC: FREEZES_BELOW_C }).to;
  const thaw = meanAirStaysAbove(climate, { season: season + 1, tempC: FREEZES_BELOW_C }).from;
  if (last === undefined || thaw === undefined) return undefined;
  const from = addDays(last, 1);
  const days = daysBetween(from, thaw);
  return days > 0 ? { from, thaw, days } : undefined;
}
