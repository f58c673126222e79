/**
 * Weather records made of a file's days, and new days laid over a record.
 */
import type { DailyWeather } from '../../garden/weather.ts';
import type { WeatherRecord } from '../../store/weather.ts';

/**
 * The record with new days added; a day it had already is replaced by the new one. A row that measures nothing replaces
 * none.
 */
export function joined(held: WeatherRecord, fresh: WeatherRecord): { record: WeatherRecord; replaced: number } {
  const byDay = new Map(held.days.map((row) => [row.day, row]));
  const rows = fresh.days.filter((row) => !byDay.has(row.day) || Object.keys(row).length > 1);
  const replaced = rows.filter(({ day }) => byDay.has(day)).length;
  for (const row of rows) byDay.set(row.day, row);
  const days = [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1));
  const origin = held.origin.includes(fresh.origin) ? held.origin : `${held.origin} With: ${fresh.origin}`;
  return { record: { origin, leftOut: held.leftOut, days }, replaced };
}

/** A record made of a file's days. */
export function recordOf(name: string, days: readonly DailyWeather[]): WeatherRecord {
  return { origin: `Daily record ${name}, ${days[0]?.day} to ${days.at(-1)?.day}.`, leftOut: [], days };
}
