/**
 * Whether a pile's log shows that all of it was heated through: the rule for a turned pile that holds manure.
 */
import type { Pile } from '../../garden/garden.ts';

/** The rule for turned piles: so many days at or above a temperature, with so many turns (compost:S22, compost:S23). */
export const HOT_RECORD = { days: 15, turns: 5, fromC: 55, toC: 76.7 } as const;

/** A pile's logged days in the heat that counts, and its turns from the first of them to the last. */
export function hotRecord(pile: Pile): { days: number; turns: number; passed: boolean } {
  const hot = pile.readings.filter(
    ({ on, tempC }) =>
      on >= pile.built.day && tempC !== undefined && tempC >= HOT_RECORD.fromC && tempC <= HOT_RECORD.toC,
  );
  const days = [...new Set(hot.map(({ on }) => on))].sort();
  const [first, last] = [days[0], days.at(-1)];
  const turns = pile.turns.filter((on) => first !== undefined && last !== undefined && on >= first && on <= last);
  return {
    days: days.length,
    turns: turns.length,
    passed: days.length >= HOT_RECORD.days && turns.length >= HOT_RECORD.turns,
  };
}
