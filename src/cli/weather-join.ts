/**
 * New days laid over a weather record.
 */
import type { WeatherRecord } from '../store/weather.ts';

/** The record with new days added; a day it had already is replaced by the new one. */
export function joined(held: WeatherRecord, fresh: WeatherRecord): { record: WeatherRecord; replaced: number } {
  const byDay = new Map(held.days.map((row) => [row.day, row]));
  const replaced = fresh.days.filter(({ day }) => byDay.has(day)).length;
  for (const row of fresh.days) byDay.set(row.day, row);
  const days = [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
  const origin = held.origin.includes(fresh.origin) ? held.origin : `${held.origin} With: ${fresh.origin}`;
  return { record: { origin, leftOut: held.leftOut, days }, replaced };
}
