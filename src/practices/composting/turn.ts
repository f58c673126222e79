/**
 * When a hot pile is turned next: by what the log says, else weekly; never in the cold, when turning only lets heat out.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Pile, PileReading } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import type { Reason, Window } from '../draft.ts';
import { lastMoved, newestReading, nextWorkingDay, REST_BELOW_C, WORKS_ON_ABOVE_C } from './pile-life.ts';

/** Core temperature at which a turn is due (Cornell, compost:S9), and at which it is overdue (Cornell, compost:S7). */
export const TOO_HOT_C = { due: 60, overdue: 65 } as const;
/** Core temperature below which a working pile is inspected and turned (USDA NRCS, compost:S27: 110 °F). */
export const COOLING_C = 43;
/** Core temperature below which a turned pile that does not heat again goes to curing (Ulster County, compost:S47: 100 °F). */
export const COLD_C = 38;
/** Days between turns with no thermometer: every 7–10 days (NC DENR, compost:S46), weekly (compost:S26, S48). */
const CALENDAR_DAYS = { low: 7, high: 10 } as const;
/** Days a pile takes to heat after it is built or turned (Cornell: 90–140 °F within 4–5 days). */
const HEAT_UP_DAYS = 5;
/** Turns before a pile that stays cold counts as done rather than stalled. House default. */
const LEAST_TURNS = 4;
/** Days a thermometer reading is held to still be true. House default. */
const READING_HOLDS_DAYS = 14;

/** The next turn's window with what decided it. */
export interface NextTurn {
  window: Window;
  reasons: readonly Reason[];
  cause: 'too hot' | 'sour' | 'ammonia' | 'cooling' | 'calendar';
}

/** Whether a pile has stopped heating though it was turned: time to let it cure. */
export function doneHeating(pile: Pile): boolean {
  const moved = lastMoved(pile);
  const reading = newestReading(pile, addDays(moved, HEAT_UP_DAYS));
  return pile.turns.length >= LEAST_TURNS && reading?.tempC !== undefined && reading.tempC < COLD_C;
}

/** When a pile is turned next. */
export function nextTurn(pile: Pile, climate: Climate): NextTurn {
  const moved = lastMoved(pile);
  const reading = newestReading(pile, moved);
  const told = reading && toldByReading(reading, moved);
  if (told !== undefined) return told;
  const wanted = addDays(moved, CALENDAR_DAYS.low);
  const hot = reading?.tempC !== undefined && reading.tempC > WORKS_ON_ABOVE_C;
  const worksOn = hot && daysBetween(reading.on, wanted) <= READING_HOLDS_DAYS;
  const day = worksOn ? wanted : nextWorkingDay(climate, wanted);
  const weekly: Reason = {
    rule: 'pile-turn.weekly',
    saw: { moved, daysLow: CALENDAR_DAYS.low, daysHigh: CALENDAR_DAYS.high },
    source: 'compost:S46',
  };
  const rest: Reason = { rule: 'pile-turn.rest', saw: { wanted, day, tempC: REST_BELOW_C }, source: 'compost:S54' };
  return {
    cause: 'calendar',
    window: { earliest: day, preferred: day, latest: addDays(day, CALENDAR_DAYS.high - CALENDAR_DAYS.low) },
    reasons: day === wanted ? [weekly] : [weekly, rest],
  };
}

function toldByReading(reading: PileReading, moved: Day): NextTurn | undefined {
  const { on, tempC, smell } = reading;
  const soon = (days: number): Window => ({ earliest: on, preferred: addDays(on, 1), latest: addDays(on, days) });
  if (tempC !== undefined && tempC >= TOO_HOT_C.due) {
    const source = tempC >= TOO_HOT_C.overdue ? 'compost:S7' : 'compost:S9';
    const saw = { on, tempC };
    return {
      cause: 'too hot',
      window: soon(1),
      reasons: [{ rule: 'pile-turn.too-hot', saw, limit: TOO_HOT_C.due, source }],
    };
  }
  if (smell === 'sour') {
    return { cause: 'sour', window: soon(2), reasons: [{ rule: 'pile-turn.sour', saw: { on }, source: 'compost:S8' }] };
  }
  if (smell === 'ammonia') {
    return {
      cause: 'ammonia',
      window: soon(3),
      reasons: [{ rule: 'pile-turn.ammonia', saw: { on }, source: 'compost:S5' }],
    };
  }
  if (tempC !== undefined && tempC < COOLING_C && daysBetween(moved, on) >= HEAT_UP_DAYS) {
    const saw = { on, tempC, moved };
    return {
      cause: 'cooling',
      window: soon(3),
      reasons: [{ rule: 'pile-turn.cooling', saw, limit: COOLING_C, source: 'compost:S27' }],
    };
  }
  return undefined;
}
