/**
 * When a hot pile is turned next: by what the log says, else weekly; never in the cold, when turning only lets heat out.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Pile, PileReading } from '../../garden/garden.ts';
import { AT_WORK_C } from '../../handbook/pile-heat.ts';
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import type { Reason, Window } from '../draft.ts';
import {
  heatedAgain,
  lastMoved,
  newestReading,
  newestTelling,
  nextWorkingDay,
  REST_BELOW_C,
  rests,
} from './pile-life.ts';

/** Core temperature at which a turn is due (Cornell, compost:S9), and at which it is overdue (Cornell, compost:S7). */
export const TOO_HOT_C = { due: 60, overdue: 65 } as const;
/** Core temperature below which a turned pile that does not heat again goes to curing (Ulster County, compost:S47: 100 °F). */
export const COLD_C = 38;
/** Core temperature above which a pile works on through cold weather. House default beside the rest rule. */
export const WORKS_ON_ABOVE_C = 40;
/** Days between turns with no thermometer: every 7–10 days (NC DENR, compost:S46), weekly (compost:S26, compost:S48). */
export const CALENDAR_DAYS = { low: 7, high: 10 } as const;
/** Days a pile takes to heat after it is built or turned (Cornell: 90–140 °F within 4–5 days). */
export const HEAT_UP_DAYS = 5;
/** Turns before a pile that stays cold counts as done rather than stalled. House default. */
export const LEAST_TURNS = 4;

/** What a turn is for. */
export type TurnCause = 'too hot' | 'sour' | 'ammonia' | 'wet' | 'pests' | 'dry' | 'slumped' | 'cooling' | 'calendar';

/** The next turn's window with what decided it. */
export interface NextTurn {
  window: Window;
  reasons: readonly Reason[];
  cause: TurnCause;
}

/** A turn that was skipped: the day that was said, and the later day it would have been made by the calendar, if later. */
export interface PassedTurn {
  on: Day;
  from: Day;
}

/**
 * Whether a pile has stopped heating though it was turned: time to let it cure. A reading in cold weather does not
 * say so (the pile rests), nor does one of a pile that is dry, sour or otherwise amiss: that is answered first.
 */
export function doneHeating(pile: Pile, climate: Climate): boolean {
  const reading = newestReading(pile, addDays(lastMoved(pile), HEAT_UP_DAYS));
  if (reading?.tempC === undefined || pile.turns.length < LEAST_TURNS) return false;
  const amiss = causeIn(pile, lastMoved(pile), climate)?.cause;
  return (amiss === undefined || amiss === 'cooling') && reading.tempC < COLD_C && !rests(climate, reading.on);
}

/**
 * When a pile is turned next. A reading of the day it was moved was taken before it was opened: it tells of heat, and
 * has been answered.
 *
 * @param passed a turn since then that was skipped: the weeks are counted from it, and what was read until that was said
 * is answered by having been passed over
 */
export function nextTurn(pile: Pile, climate: Climate, passed?: PassedTurn): NextTurn {
  const moved = latestOf(lastMoved(pile), passed?.on ?? pile.built.day);
  const told = toldByLog(pile, moved, climate);
  return told ?? byCalendar(pile, climate, passed?.on === moved ? passed : { from: moved });
}

/** What asks for a turn of a pile that nobody turns by the calendar, being cold or curing: slowness does not. */
const ASKS_ANYWAY: ReadonlySet<TurnCause> = new Set(['too hot', 'sour', 'ammonia', 'wet', 'pests']);

/** The turn that a cold or curing pile's log asks for; nothing where all is well with it, or was when one was skipped. */
export function turnAnyway(pile: Pile, climate: Climate, passed?: PassedTurn): NextTurn | undefined {
  const { built, curingSince = built.day } = pile;
  const told = toldByLog(pile, latestOf(lastMoved(pile), curingSince, passed?.on ?? built.day), climate);
  return told !== undefined && ASKS_ANYWAY.has(told.cause) ? told : undefined;
}

/** @param counted the day the weeks are counted from, and where a turn was skipped, when that was said */
function byCalendar(
  pile: Pile,
  climate: Climate,
  { from: moved, on: skipped }: Partial<PassedTurn> & { from: Day },
): NextTurn {
  const again = heatedAgain(pile).at(-1);
  const wanted = latestOf(addDays(moved, CALENDAR_DAYS.low), again ?? moved);
  const reading = newestReading(pile, moved);
  const hot = reading?.tempC !== undefined && reading.tempC > WORKS_ON_ABOVE_C;
  const day = hot ? wanted : nextWorkingDay(climate, wanted);
  const weekly: Reason = {
    rule: skipped === undefined ? 'pile-turn.weekly' : 'pile-turn.after-skip',
    saw: {
      moved,
      ...(skipped === undefined ? {} : { skipped }),
      daysLow: CALENDAR_DAYS.low,
      daysHigh: CALENDAR_DAYS.high,
      ...seen(newestReading(pile, addDays(moved, 1))),
    },
    source: 'compost:S46',
  };
  const rest: Reason = { rule: 'pile-turn.rest', saw: { wanted, day, tempC: REST_BELOW_C }, source: 'compost:S54' };
  return {
    cause: 'calendar',
    window: { earliest: day, preferred: day, latest: addDays(day, CALENDAR_DAYS.high - CALENDAR_DAYS.low) },
    reasons: day === wanted ? [weekly] : [weekly, rest],
  };
}

/** What a look since the last turn found, where it asks for nothing. */
function seen(reading: PileReading | undefined): Reason['saw'] {
  if (reading === undefined) return {};
  return { on: reading.on, ...(reading.tempC === undefined ? {} : { tempC: reading.tempC }) };
}

/** Days within which each cause is to be answered, and where that is said. The days after the first are house defaults. */
export const ANSWER: Readonly<Record<Exclude<TurnCause, 'calendar'>, { days: number; source: Reason['source'] }>> = {
  'too hot': { days: 1, source: 'compost:S9' },
  sour: { days: 2, source: 'compost:S8' },
  ammonia: { days: 3, source: 'compost:S5' },
  wet: { days: 3, source: 'compost:S12' },
  pests: { days: 3, source: 'compost:S58' },
  dry: { days: 3, source: 'compost:S8' },
  slumped: { days: 7, source: 'house default' },
  cooling: { days: 3, source: 'compost:S27' },
};

const LIMIT_C: Readonly<Partial<Record<TurnCause, number>>> = { 'too hot': TOO_HOT_C.due, cooling: AT_WORK_C };

function toldByLog(pile: Pile, moved: Day, climate: Climate): NextTurn | undefined {
  const told = causeIn(pile, moved, climate);
  if (told === undefined) return undefined;
  const { cause, reading } = told;
  const { on, tempC } = reading;
  const { days, source } = ANSWER[cause];
  const limit = LIMIT_C[cause];
  const overdue = cause === 'too hot' && tempC !== undefined && tempC >= TOO_HOT_C.overdue;
  const reason: Reason = {
    rule: `pile-turn.${cause.replace(' ', '-')}`,
    saw: { on, ...(tempC === undefined ? {} : { tempC }) },
    ...(limit === undefined ? {} : { limit }),
    source: overdue ? 'compost:S7' : source,
  };
  const window = overdue
    ? { earliest: on, preferred: on, latest: on }
    : { earliest: on, preferred: addDays(on, 1), latest: addDays(on, days) };
  return { cause, window, reasons: [reason] };
}

interface Told {
  cause: Exclude<TurnCause, 'calendar'>;
  /** The reading that tells it. */
  reading: PileReading;
}

/** What asks for a turn since the pile was last moved: each sign by the newest reading that tells of it. */
function causeIn(pile: Pile, moved: Day, climate: Climate): Told | undefined {
  const since = addDays(moved, 1);
  const core = newestTelling(pile, since, 'tempC');
  const smelt = newestTelling(pile, since, 'smell');
  const felt = newestTelling(pile, since, 'moisture');
  const byHand = newestTelling(pile, since, 'by hand');
  if (core?.tempC !== undefined && core.tempC >= TOO_HOT_C.due) return { cause: 'too hot', reading: core };
  if (smelt?.smell === 'sour' || smelt?.smell === 'ammonia') return { cause: smelt.smell, reading: smelt };
  if (felt?.moisture === 'wet') return { cause: 'wet', reading: felt };
  if (byHand?.pests) return { cause: 'pests', reading: byHand };
  const newest = newestReading(pile, since);
  if (newest === undefined || (rests(climate, newest.on) && (core?.tempC ?? 0) <= WORKS_ON_ABOVE_C)) return undefined;
  if (felt?.moisture === 'dry') return { cause: 'dry', reading: felt };
  if (byHand?.slumped) return { cause: 'slumped', reading: byHand };
  const cool = core?.tempC !== undefined && core.tempC < AT_WORK_C && daysBetween(moved, core.on) >= HEAT_UP_DAYS;
  return cool ? { cause: 'cooling', reading: core } : undefined;
}
