/**
 * Invented gardens small enough to work out by hand, over real and stated climates.
 */

import type { Climate } from '../../src/climate/climate.ts';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import type { Bed, Garden, Pile, Place, Planting, Stand } from '../../src/garden/garden.ts';
import { addDays, type Day, type MonthDay } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { PracticeInput } from '../../src/practices/practice.ts';
import { NO_OFFSETS, recordClimate } from '../climate/real-data.ts';
import { NOTHING_TOLD } from '../garden/nothing-told.ts';

/** Milwaukee's last thirty seasons: median freezes 23 April and 23 October. */
export const milwaukee = recordClimate('milwaukee', 2020);

/** A climate of two median freeze dates and nothing else. */
export function frostDates(lastSpring: MonthDay, firstAutumn: MonthDay, latitude = 43): Climate {
  return climateFromFrostDates({ latitude, longitude: -80, ...NO_OFFSETS, lastSpring, firstAutumn });
}

const place: Place = {
  latitude: 43,
  longitude: -88,
  timeZone: 'America/Chicago',
  units: 'metric',
  workDays: [6, 7],
  hoursPerWeek: 4,
  soilTexture: 'loam',
  frostRisk: 30,
  bloomRiskPercent: 10,
  frostOffsetDays: 0,
  tempOffsetC: 0,
};

/** A garden begun on a day; what its plantings, stands and piles date up to that day has happened. */
export function garden(parts: Partial<Omit<Garden, 'place'>> & { place?: Partial<Place> } = {}): Garden {
  const { startedOn = '2027-01-01' } = parts;
  const past = <T extends { day: Day }>(event: T): T & { happened: boolean } => ({
    ...event,
    happened: event.day <= startedOn,
  });
  return {
    id: 'g',
    name: 'Garden',
    startedOn,
    climate: { kind: 'daily-record', file: 'weather.csv' },
    beds: [bed('a')],
    bins: [{ id: 'bin', name: 'Left bay', volumeL: 900 }],
    ...NOTHING_TOLD,
    ...parts,
    place: { ...place, ...parts.place },
    plantings: (parts.plantings ?? []).map(({ start, lastHarvest, ...row }) => ({
      ...row,
      start: past(start),
      ...(lastHarvest ? { lastHarvest: past(lastHarvest) } : {}),
    })),
    stands: (parts.stands ?? []).map((row) => ({ ...row, sow: past(row.sow) })),
    piles: (parts.piles ?? []).map((row) => ({ ...row, built: past(row.built) })),
  };
}

/** A bed of 1.2 × 2.5 m: 3 m². */
export function bed(id: string, parts: Partial<Bed> = {}): Bed {
  return { id, name: `Bed ${id.toUpperCase()}`, lengthM: 2.5, widthM: 1.2, raised: true, watered: false, ...parts };
}

/** A crop sown in bed A unless said otherwise. */
export function sown(cropId: string, day: Day, parts: Partial<Planting> & { harvested?: Day } = {}): Planting {
  const { harvested, ...rest } = parts;
  return {
    id: `${cropId}-${day}`,
    bedId: 'a',
    cropId,
    start: { how: 'sow', day, happened: false },
    ...(harvested === undefined ? {} : { lastHarvest: { day: harvested, happened: false } }),
    ...rest,
  };
}

/** A crop set out in bed A unless said otherwise. */
export function setOut(cropId: string, day: Day, parts: Partial<Planting> & { harvested?: Day } = {}): Planting {
  return { ...sown(cropId, day, parts), start: { how: 'set-out', day, happened: false } };
}

/** A cover stand in bed A unless said otherwise. */
export function cover(coverId: string, day: Day, parts: Partial<Stand> = {}): Stand {
  return { id: 's', bedId: 'a', coverId, sow: { day, happened: false }, regrowthCheckedOn: [], ...parts };
}

/** A hot pile of 400 L of leaves and 200 L of grass, unless said otherwise. */
export function pile(built: Day, parts: Partial<Pile> = {}): Pile {
  return {
    id: 'p',
    binId: 'bin',
    built: { day: built, happened: false },
    method: 'hot',
    ingredients: [
      { materialId: 'leaves_dry_loose', litres: 400 },
      { materialId: 'grass_clippings_fresh_loose', litres: 200 },
    ],
    readings: [],
    turns: [],
    ...parts,
  };
}

/** What the practices look at: the garden over Milwaukee on the day it began, a year and a month ahead. */
export function inputOf(of: Garden, climate: Climate = milwaukee, today: Day = of.startedOn): PracticeInput {
  return { garden: of, climate, today, until: addDays(today, 396) };
}

/** Every draft of a garden. */
export function draftsIn(of: Garden, climate?: Climate, today?: Day): TaskDraft[] {
  return draftsOf(inputOf(of, climate, today));
}

/** The one draft whose key starts so. */
export function draft(drafts: readonly TaskDraft[], keyStart: string): TaskDraft {
  const found = drafts.filter(({ key }) => key.startsWith(keyStart));
  if (found.length !== 1 || !found[0]) {
    throw new Error(
      `${found.length} drafts start with "${keyStart}". There are: ${drafts.map(({ key }) => key).join(', ')}.`,
    );
  }
  return found[0];
}

/** The rules a draft gives as its reasons. */
export function rulesOf({ reasons }: TaskDraft): string[] {
  return reasons.map(({ rule }) => rule);
}
