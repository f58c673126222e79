/**
 * When a crop's last harvest is, by what was told and by what was planned.
 */
import { addDays, type Day, daysBetween } from '../measures/days.ts';
import type { Planting } from './garden.ts';

/** The day the last harvest was, or is planned: that of a crop that went in late is as many days later than it was meant. */
export function harvestEnd({ start, lastHarvest }: Planting): Day | undefined {
  if (lastHarvest === undefined || lastHarvest.happened) return lastHarvest?.day;
  return addDays(lastHarvest.day, daysLate(start));
}

/** Days by which a crop went in later than it was meant to; none where it went in early, or is still to go in. */
export function daysLate({ day, happened, meant }: Planting['start']): number {
  return happened && meant !== undefined ? Math.max(0, daysBetween(meant, day)) : 0;
}
