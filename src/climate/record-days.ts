/**
 * What a daily record holds: its years, and the gaps in them.
 */
import type { DailyWeather } from '../garden/weather.ts';
import { addDays, type Day, daysBetween, yearOf } from '../measures/days.ts';
import { MISSING_DAYS_ALLOWED } from './freeze-record.ts';

/** Days of one calendar year on which something was measured. */
export interface RecordYear {
  year: number;
  lows: number;
  highs: number;
  rain: number;
  /** Days on which new snow, snow lying or both were measured, nought included. */
  snow: number;
}

/** Days on end without a low, a high or both. */
export interface RecordGap {
  from: Day;
  to: Day;
  days: number;
}

/** A record by its years and gaps. */
export interface RecordDays {
  days: number;
  first: Day;
  last: Day;
  /** Every calendar year from the first to the last, those without a day among them. */
  years: readonly RecordYear[];
  /** Gaps longer than a freeze date could be told over ({@link MISSING_DAYS_ALLOWED} days), oldest first. */
  gaps: readonly RecordGap[];
}

/**
 * What a record holds.
 *
 * @param rows in calendar order, each day once
 * @returns nothing for a record without a day
 */
export function recordDays(rows: readonly DailyWeather[]): RecordDays | undefined {
  const [first, last] = [rows[0]?.day, rows.at(-1)?.day];
  if (first === undefined || last === undefined) return undefined;
  return { days: rows.length, first, last, years: yearsOf(rows, yearOf(first), yearOf(last)), gaps: gapsIn(rows) };
}

function yearsOf(rows: readonly DailyWeather[], from: number, to: number): RecordYear[] {
  const years = Array.from({ length: to - from + 1 }, (_, at) => ({
    year: from + at,
    lows: 0,
    highs: 0,
    rain: 0,
    snow: 0,
  }));
  for (const { day, tminC, tmaxC, rainMm, newSnowMm, snowDepthMm } of rows) {
    const year = years[yearOf(day) - from];
    if (year === undefined) continue;
    year.lows += tminC === undefined ? 0 : 1;
    year.highs += tmaxC === undefined ? 0 : 1;
    year.rain += rainMm === undefined ? 0 : 1;
    year.snow += newSnowMm === undefined && snowDepthMm === undefined ? 0 : 1;
  }
  return years;
}

function gapsIn(rows: readonly DailyWeather[]): RecordGap[] {
  const whole = rows.filter(({ tminC, tmaxC }) => tminC !== undefined && tmaxC !== undefined).map(({ day }) => day);
  const [first, last] = [rows[0]?.day ?? '', rows.at(-1)?.day ?? ''];
  const ends = [...whole, addDays(last, 1)];
  return ends.flatMap((until, at) => {
    const from = at === 0 ? first : addDays(ends[at - 1] ?? first, 1);
    const days = daysBetween(from, until);
    return days > MISSING_DAYS_ALLOWED ? [{ from, to: addDays(until, -1), days }] : [];
  });
}
