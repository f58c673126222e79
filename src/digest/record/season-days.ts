/**
 * The days of a season.
 */
import type { SeasonTurn } from '../../climate/climate.ts';
import { dayOfIndex } from '../../climate/season.ts';
import { addDays, type Day } from '../../measures/days.ts';

/** First and last day of a season. */
export interface SeasonDays {
  from: Day;
  to: Day;
}

/** The days of a season, by the calendar year it begins in. */
export function seasonDays(turn: SeasonTurn, season: number): SeasonDays {
  const first = (of: number): Day => dayOfIndex(turn, of, 1);
  return { from: first(season), to: addDays(first(season + 1), -1) };
}
