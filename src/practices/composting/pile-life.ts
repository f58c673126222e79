/**
 * Where a pile stands in its life and when it will be ready, from its log and the warmth of the garden's year.
 */
import { meanAirStaysAbove } from '../../climate/air.ts';
import type { Climate } from '../../climate/climate.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Pile, PileReading } from '../../garden/garden.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { LITRES_PER_CUBIC_FOOT } from '../../measures/units.ts';
import type { Portion } from './mix/portion.ts';

/** Mean air below which an untended pile rests: it starts again when air passes about 50 °F (Penn State, compost:S55). */
export const REST_BELOW_C = 10;
/** Days of weekly-turned work until a hot pile is done heating (Texas, compost:S26): 90 to 120. */
export const HOT_DAYS = { low: 90, usual: 105, high: 120 } as const;
/** Days of curing after the last heat (Utah State, compost:S16): three to four weeks. */
export const CURING_DAYS = { low: 21, high: 28 } as const;
/** Days until an unturned pile is ready: a year, two in cold places. Common practice. */
export const COLD_DAYS = { low: 365, high: 730 } as const;
/** Share of the volume a pile loses (Manitoba, compost:S13): 50 to 70 %. */
export const VOLUME_LOSS = { low: 0.5, usual: 0.6, high: 0.7 } as const;
/** Seasons within which a hot pile's working days are looked for; with fewer warm days it is never done by turning. */
const SEASONS_TO_WORK = 4;

/** A pile's newest day of readings at or after a day; what was noted apart on that day is put together. */
export function newestReading(pile: Pile, since: Day): PileReading | undefined {
  const on = pile.readings
    .map((reading) => reading.on)
    .filter((day) => day >= since)
    .sort()
    .at(-1);
  const notes = pile.readings.filter((reading) => reading.on === on);
  return notes.length === 0 ? undefined : Object.assign({}, ...notes);
}

/** A sign that a look at a pile may have told of. */
type Sign = 'tempC' | 'smell' | 'moisture' | 'by hand';

/**
 * The newest reading at or after a day that tells of a sign; `by hand` is any look that was more than a thermometer's, and
 * tells of pests and slumping too. A bare temperature does not take back what was smelt or felt the day before.
 */
export function newestTelling(pile: Pile, since: Day, sign: Sign): PileReading | undefined {
  const tells = ({ tempC, smell, moisture, pests, slumped }: PileReading): boolean => {
    if (sign === 'tempC') return tempC !== undefined;
    if (sign === 'smell') return smell !== undefined;
    if (sign === 'moisture') return moisture !== undefined;
    return (smell ?? moisture ?? pests ?? slumped) !== undefined;
  };
  return newestReading({ ...pile, readings: pile.readings.filter(tells) }, since);
}

/** Days on which a pile that was curing was found to heat again, oldest first. */
export function heatedAgain({ notReady = [] }: Pile): Day[] {
  return notReady.filter(({ failed }) => failed.includes('heats')).map(({ on }) => on);
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

/** Whether a pile left to itself rests on a day, the air being too cold. */
export function rests(climate: Climate, day: Day): boolean {
  return nextWorkingDay(climate, day) !== day;
}

/** The first rest over winter that begins between two days, from the day the air falls below {@link REST_BELOW_C} on. */
export function restBetween(climate: Climate, after: Day, before: Day): { from: Day; to: Day } | undefined {
  const season = seasonOf(climate.seasonTurn, after);
  const { to: ends } = meanAirStaysAbove(climate, { season, tempC: REST_BELOW_C });
  if (ends === undefined || ends < after || ends >= before) return undefined;
  const wakes = nextWorkingDay(climate, addDays(ends, 1));
  return wakes > addDays(ends, 1) ? { from: addDays(ends, 1), to: wakes } : undefined;
}

/** The day a pile built on a day has had so many days warm enough to work in; nothing where years do not do. */
export function dayAfterWorking(climate: Climate, built: Day, workingDays: number): Day | undefined {
  let day = built;
  let left = workingDays;
  for (let spans = 0; spans < SEASONS_TO_WORK; spans += 1) {
    day = nextWorkingDay(climate, day);
    const season = seasonOf(climate.seasonTurn, day);
    const { to } = meanAirStaysAbove(climate, { season, tempC: REST_BELOW_C });
    const span = to === undefined ? 0 : Math.max(0, daysBetween(day, to) + 1);
    if (span >= left) return addDays(day, left);
    left -= span;
    day = addDays(day, Math.max(1, span));
  }
  return undefined;
}

/** The day a hot pile built on a day can be counted on: the late end of its heat, and of its curing. */
function hotReady(climate: Climate, built: Day): Day | undefined {
  const end = dayAfterWorking(climate, built, HOT_DAYS.high);
  return end === undefined ? undefined : addDays(end, CURING_DAYS.high);
}

/** Days before a wanted day in which the beginning of a pile is looked for: winter may lie between, not two. */
const BEGUN_WITHIN_DAYS = 730;

/** The last day on which a hot pile can be begun to be counted on by a day; halving what lies between. */
export function startBy(climate: Climate, ready: Day): Day | undefined {
  const inTime = (days: number): boolean => (hotReady(climate, addDays(ready, -days)) ?? addDays(ready, 1)) <= ready;
  let [late, early] = [0, BEGUN_WITHIN_DAYS];
  if (!inTime(early)) return undefined;
  while (early - late > 1) {
    const middle = Math.floor((early + late) / 2);
    if (inTime(middle)) early = middle;
    else late = middle;
  }
  return addDays(ready, -early);
}

/** Least pile that heats by itself, litres: 3 × 3 × 3 ft (compost:S19, compost:S47). */
export const HEATS_FROM_LITRES = Math.round(27 * LITRES_PER_CUBIC_FOOT);

/** Litres to build of for so many litres of compost, by the usual loss. */
export function rawLitres(compostLitres: number): number {
  return Math.max(HEATS_FROM_LITRES, compostLitres / (1 - VOLUME_LOSS.usual));
}

/** What a pile is built of, as portions of a mix. */
export function portionsOf({ ingredients }: Pile): Portion[] {
  return ingredients.map(({ materialId, litres }) => ({ material: feedstockById(materialId), amount: { litres } }));
}

/** Litres a pile was built of. */
export function builtLitres(pile: Pile): number {
  return pile.ingredients.reduce((sum, { litres }) => sum + litres, 0);
}

/** Litres of finished compost a pile gives: measured, or what is left after the usual loss. */
export function finishedLitres(pile: Pile): number {
  return pile.finishedLitres ?? Math.round(builtLitres(pile) * (1 - VOLUME_LOSS.usual));
}

/** Whether a pile holds manure, or nobody wrote down what it holds. */
export function mayHoldManure(pile: Pile): boolean {
  return pile.ingredients.length === 0 || pile.ingredients.some(({ materialId }) => feedstockById(materialId).manure);
}
