/**
 * Where a pile stands in its life and when it will be ready, from its log and the warmth of the garden's year.
 */
import { meanAirStaysAbove } from '../../climate/air.ts';
import type { Climate } from '../../climate/climate.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Pile, PileReading } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';

/** Mean air below which an untended pile rests: it starts again when air passes about 50 °F (Penn State, compost:S55). */
export const REST_BELOW_C = 10;
/** Core temperature above which a pile works on through cold weather. House default beside the rest rule. */
export const WORKS_ON_ABOVE_C = 40;
/** Days of weekly-turned work until a hot pile is done heating (Texas, compost:S26): 90 to 120. */
export const HOT_DAYS = { low: 90, usual: 105, high: 120 } as const;
/** Days of curing after the last heat (Utah State, compost:S16): three to four weeks. */
export const CURING_DAYS = { low: 21, high: 28 } as const;
/** Days until an unturned pile is ready: a year, two in cold places. Common practice. */
export const COLD_DAYS = { low: 365, high: 730 } as const;
/** Share of the volume a pile loses (Manitoba, compost:S13): 50 to 70 %. */
export const VOLUME_LOSS = { low: 0.5, usual: 0.6, high: 0.7 } as const;

/** The newest of a pile's readings at or after a day. */
export function newestReading(pile: Pile, since: Day): PileReading | undefined {
  return [...pile.readings].sort((a, b) => (a.on < b.on ? 1 : -1)).find((reading) => reading.on >= since);
}

/** The day a pile was last moved: its newest turn, or the day it was built. */
export function lastMoved(pile: Pile): Day {
  return latestOf(pile.built.day, ...pile.turns);
}

/**
 * The first day at or after a wanted one on which a pile left to itself is at work: the wanted day in the warm part of
 * the year, else the day the mean air comes back to {@link REST_BELOW_C}.
 */
export function nextWorkingDay(climate: Climate, wanted: Day): Day {
  const season = seasonOf(climate.seasonTurn, wanted);
  for (const year of [season, season + 1]) {
    const { from, to } = meanAirStaysAbove(climate, { season: year, tempC: REST_BELOW_C });
    if (from === undefined || to === undefined) continue;
    if (wanted <= to) return latestOf(wanted, from);
  }
  return wanted;
}

/** The day a pile built on a day has had so many days warm enough to work in. */
export function dayAfterWorking(climate: Climate, built: Day, workingDays: number): Day {
  let day = built;
  let left = workingDays;
  // Two years hold enough warm days for any hot pile; a climate without them is left at the last day tried.
  for (let spans = 0; spans < 4 && left > 0; spans += 1) {
    day = nextWorkingDay(climate, day);
    const season = seasonOf(climate.seasonTurn, day);
    const { to } = meanAirStaysAbove(climate, { season, tempC: REST_BELOW_C });
    const span = to === undefined ? left : Math.max(0, daysBetween(day, to) + 1);
    if (span >= left) return addDays(day, left);
    left -= span;
    day = addDays(day, span);
  }
  return day;
}

/** Span of days in which a pile's active life ends, from the day it was built. */
export function activeEnd(pile: Pile, climate: Climate): { low: Day; usual: Day; high: Day } {
  const end = (days: number) => dayAfterWorking(climate, pile.built.day, days);
  return { low: end(HOT_DAYS.low), usual: end(HOT_DAYS.usual), high: end(HOT_DAYS.high) };
}

/** The day a pile's compost can be counted on. */
export function readyDay(pile: Pile, climate: Climate): Day {
  if (pile.finishedOn !== undefined) return pile.finishedOn;
  if (pile.curingSince !== undefined) return addDays(pile.curingSince, CURING_DAYS.high);
  if (pile.method === 'cold') return addDays(pile.built.day, COLD_DAYS.high);
  return addDays(activeEnd(pile, climate).high, CURING_DAYS.high);
}

/** Litres a pile was built of. */
export function builtLitres(pile: Pile): number {
  return pile.ingredients.reduce((sum, { litres }) => sum + litres, 0);
}

/** Litres of finished compost a pile gives: measured, or what is left after the usual loss. */
export function finishedLitres(pile: Pile): number {
  return pile.finishedLitres ?? Math.round(builtLitres(pile) * (1 - VOLUME_LOSS.usual));
}
