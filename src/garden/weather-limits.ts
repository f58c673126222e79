/**
 * What a day's weather can be at most: what passes a limit is a slip of unit or hand.
 */
import type { Problem } from './problem.ts';
import type { DailyWeather } from './weather.ts';

/** What may be measured of a day. */
export type Measured = Exclude<keyof DailyWeather, 'day'>;

/** What each measurement is called. */
export const MEASURED_WORDS: Readonly<Record<Measured, string>> = {
  tminC: 'low',
  tmaxC: 'high',
  rainMm: 'rain',
  newSnowMm: 'new snow',
  snowDepthMm: 'snow lying',
  wateringMm: 'watering',
};

/** The least and the most a measurement can be, both possible, and what to give instead. */
export interface WeatherLimit {
  least: number;
  most: number;
  mend: string;
}

const CELSIUS: WeatherLimit = { least: -90, most: 60, mend: 'Give degrees Celsius between -90 and 60, such as -3.3.' };

/**
 * Limits a little outside the records of the world (from memory: −89.2 and 56.7 °C; in one day 1.8 m of rain and
 * 2.3 m of snow; 11.8 m of lying snow). Watering: half a metre in a day is a flood (house default).
 */
export const WEATHER_LIMITS: Readonly<Record<Measured, WeatherLimit>> = {
  tminC: CELSIUS,
  tmaxC: CELSIUS,
  rainMm: { least: 0, most: 2000, mend: 'Give millimetres of water, 0 to 2000, such as 4.6.' },
  newSnowMm: { least: 0, most: 2500, mend: 'Give millimetres of new snow, 0 to 2500, such as 81.' },
  snowDepthMm: { least: 0, most: 15_000, mend: 'Give millimetres of lying snow, 0 to 15000, such as 120.' },
  wateringMm: { least: 0, most: 500, mend: 'Give millimetres of watering, 0 to 500, such as 12.' },
};

/** Whether a measurement can be true. */
export function isPossible(measured: Measured, value: number): boolean {
  const { least, most } = WEATHER_LIMITS[measured];
  return value >= least && value <= most;
}

/** What is wrong with the two extremes of a day, if anything. */
export function extremesProblem(
  { tminC, tmaxC }: { tminC?: number | undefined; tmaxC?: number | undefined },
  where: string,
): Problem | undefined {
  if (tminC === undefined || tmaxC === undefined || tmaxC >= tminC) return undefined;
  const what = `The day's highest, ${tmaxC} °C, is below its lowest, ${tminC} °C.`;
  return { where, what, mend: 'Swap the two, or leave both empty.' };
}
