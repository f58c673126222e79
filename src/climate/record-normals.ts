/**
 * Monthly means of a daily record.
 */

import type { DailyWeather } from '../garden/weather.ts';
import { dayParts, daysInMonth } from '../measures/days.ts';
import type { MonthlyNormals, SeasonTurn, SeasonWeather } from './climate.ts';
import { meanOf } from './quantiles.ts';
import { dayOfIndex } from './season.ts';

const MONTHS = 12;

/**
 * Twelve monthly means of the seasons' temperatures, and twelve mean monthly sums of the rows' rain. A month's rain is
 * its mean day times its days, so that missing days do not make it dry.
 */
export function monthlyMeans(
  turn: SeasonTurn,
  seasons: readonly SeasonWeather[],
  rows: readonly DailyWeather[],
): MonthlyNormals {
  const rain = rainByMonth(rows);
  return {
    tmaxC: temperatureByMonth(turn, seasons, 'tmaxC'),
    tminC: temperatureByMonth(turn, seasons, 'tminC'),
    ...(rain ? { rainMm: rain } : {}),
  };
}

function temperatureByMonth(turn: SeasonTurn, seasons: readonly SeasonWeather[], which: 'tminC' | 'tmaxC'): number[] {
  const byMonth: number[][] = Array.from({ length: MONTHS }, () => []);
  const months = seasons[0]?.[which].map((_, i) => dayParts(dayOfIndex(turn, 2001, i + 1)).month) ?? [];
  for (const season of seasons)
    season[which].forEach((tempC, i) => {
      if (tempC !== undefined) byMonth[(months[i] ?? 1) - 1]?.push(tempC);
    });
  return byMonth.map(meanOf);
}

function rainByMonth(rows: readonly DailyWeather[]): number[] | undefined {
  const byMonth: number[][] = Array.from({ length: MONTHS }, () => []);
  for (const { day, rainMm } of rows) if (rainMm !== undefined) byMonth[dayParts(day).month - 1]?.push(rainMm);
  if (byMonth.some((days) => days.length === 0)) return undefined;
  return byMonth.map((days, i) => meanOf(days) * daysInMonth(2001, i + 1));
}
