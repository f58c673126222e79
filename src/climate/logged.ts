/**
 * The garden's own weather as the climate of a day takes it.
 */
import type { LoggedDay } from '../garden/weather.ts';
import { addDays, type Day, daysBetween, latestOf } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import type { Climate } from './climate.ts';
import { MISSING_DAYS_ALLOWED } from './freeze-record.ts';

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
  const logged = [...rows.values()];
  const heard = { ...climate, logged };
  const known = { ...heard, notes: [...climate.notes, ...gapNotes(heard, today)] };
  withoutLog.set(known, climate);
  return known;
}

const withoutLog = new WeakMap<Climate, Climate>();

/** The climate without the garden's own weather: what is worked out from it alone need not be worked out again. */
export function usualOf(climate: Climate): Climate {
  return withoutLog.get(climate) ?? climate;
}

/** Days back in which gaps of the log are told: what lies further back no longer moves a date much. House default. */
const GAPS_TOLD_DAYS = 183;

/**
 * Spans of more than five days without a temperature, from the first that was logged up to a day, one sentence each. In
 * such a span every member keeps its own weather, so that the odds lie further apart: nothing else widens them.
 */
export function gapNotes({ logged, seasons }: Climate, today: Day): string[] {
  const seen = logged.filter(({ kind, tminC, tmaxC }) => kind === 'observed' && (tminC ?? tmaxC) !== undefined);
  const days = [...seen.map(({ day }) => day), addDays(today, 1)];
  const told = addDays(today, -GAPS_TOLD_DAYS);
  return days.slice(1).flatMap((day, i) => {
    const from = latestOf(addDays(days[i] ?? day, 1), told);
    const count = daysBetween(from, day);
    return count > MISSING_DAYS_ALLOWED
      ? [`${gapWords(from, addDays(day, -1), count)} ${seasons.length > 0 ? SEASONS_STAND_IN : USUAL_STANDS_IN}`]
      : [];
  });
}

const SEASONS_STAND_IN =
  "The record's seasons stand in for them, each with its own weather, so that dates reckoned from heat, frost and wet lie " +
  'further apart.';
const USUAL_STANDS_IN = 'What is usual stands in for them.';

function gapWords(from: Day, to: Day, count: number): string {
  return `No temperature was logged from ${dated(from)} to ${dated(to)}, ${count} days.`;
}
