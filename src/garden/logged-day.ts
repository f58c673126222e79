/**
 * A day of the garden's own weather, as a fact tells it.
 */
import { z } from 'zod';
import { isDay } from '../measures/days.ts';
import { type Measured, WEATHER_LIMITS } from './weather-limits.ts';

function measured(what: Measured) {
  const { least, most } = WEATHER_LIMITS[what];
  return z.number().min(least).max(most).optional();
}

/** A real date. */
export const realDay = z.string().refine(isDay, 'a real date as YYYY-MM-DD');

/** A day that was seen, or is expected, with what was measured or forecast. */
export const loggedDay = z.object({
  day: realDay,
  kind: z.enum(['observed', 'expected']),
  tminC: measured('tminC'),
  tmaxC: measured('tmaxC'),
  rainMm: measured('rainMm'),
  newSnowMm: measured('newSnowMm'),
  snowDepthMm: measured('snowDepthMm'),
  wateringMm: measured('wateringMm'),
});
