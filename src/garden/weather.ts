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
}
