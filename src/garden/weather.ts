/**
 * What a weather record says of a day.
 */
import type { Day } from '../measures/days.ts';

/** One day's weather; absent where it was not measured. */
export interface DailyWeather {
  day: Day;
  tminC?: number;
  tmaxC?: number;
  /** Rain and melted snow, mm of water. */
  rainMm?: number;
  /** Snow fallen that day, mm deep. */
  newSnowMm?: number;
  /** Snow lying, mm deep. */
  snowDepthMm?: number;
  /** Water given to the beds, mm. */
  wateringMm?: number;
}

/** A day of the garden's own log: seen there, or expected from a forecast. A day may have a row of each. */
export interface LoggedDay extends DailyWeather {
  kind: 'observed' | 'expected';
}

/**
 * A log with more days taken in, oldest first. What is told of a day again takes the place of what was told of it
 * before, measurement by measurement, so that a report of snow leaves the day's temperatures standing.
 */
export function withLogged(log: readonly LoggedDay[], days: readonly LoggedDay[]): LoggedDay[] {
  const rows = new Map(log.map((row) => [nameOf(row), row]));
  for (const row of days) rows.set(nameOf(row), { ...rows.get(nameOf(row)), ...row });
  return [...rows.values()].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
}

/** A log with some days given anew, whole: nothing of what was told of them before is left. */
export function withDaysAnew(log: readonly LoggedDay[], days: readonly LoggedDay[]): LoggedDay[] {
  const anew = new Set(days.map(nameOf));
  return withLogged(
    log.filter((row) => !anew.has(nameOf(row))),
    days,
  );
}

/** A log without some of its days. */
export function withoutDays(log: readonly LoggedDay[], days: readonly Pick<LoggedDay, 'day' | 'kind'>[]): LoggedDay[] {
  const gone = new Set(days.map(nameOf));
  return log.filter((row) => !gone.has(nameOf(row)));
}

function nameOf({ day, kind }: Pick<LoggedDay, 'day' | 'kind'>): string {
  return `${day} ${kind}`;
}
