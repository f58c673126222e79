/**
 * The garden's own weather as the climate of a day takes it.
 */
import type { LoggedDay } from '../garden/weather.ts';
import { addDays, type Day } from '../measures/days.ts';
import type { Climate } from './climate.ts';

/** Days ahead a forecast is believed: beyond them the seasons of the record say as much. House default. */
export const EXPECTED_DAYS = 10;

/**
 * A climate that knows what was seen up to today and is expected in the days after it. What was expected and is past
 * counts for nothing; of a day that was both, what was seen goes before.
 *
 * @param weather the garden's log, oldest first, the expected row of a day before the one that was seen
 */
export function withWeather(climate: Climate, weather: readonly LoggedDay[], today: Day): Climate {
  const last = addDays(today, EXPECTED_DAYS);
  const rows = new Map<Day, LoggedDay>();
  for (const row of weather) {
    const counts = row.kind === 'observed' ? row.day <= today : row.day >= today && row.day <= last;
    if (counts) rows.set(row.day, { ...rows.get(row.day), ...row });
  }
  if (rows.size === 0) return climate;
  const known = { ...climate, logged: [...rows.values()] };
  withoutLog.set(known, climate);
  return known;
}

const withoutLog = new WeakMap<Climate, Climate>();

/** The climate without the garden's own weather: what is worked out from it alone need not be worked out again. */
export function usualOf(climate: Climate): Climate {
  return withoutLog.get(climate) ?? climate;
}
