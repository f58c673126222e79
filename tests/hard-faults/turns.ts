/**
 * What is brought in at each turn: no two neighbours alike, so that a half of one and a half of the other would show.
 */
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { eachDay } from '../../src/measures/days.ts';
import type { WeatherRecord } from '../../src/store/weather.ts';

/** A garden named after its turn. */
export function fileOf(turn: number): GardenFile {
  return checkGardenFile({
    garden: {
      id: 'plot',
      name: `Turn ${turn}`,
      latitude: 44.5,
      longitude: -88.1,
      timeZone: 'America/Chicago',
      units: 'us',
    },
    climate: { frostDates: { lastSpring: '05-10', firstAutumn: '09-28' } },
    beds: [{ id: 'north', name: 'North bed', lengthM: 3, widthM: 1.2 }],
  });
}

/** Three years of days, every one of which tells the turn. */
export function recordOf(turn: number): WeatherRecord {
  return {
    origin: `Turn ${turn}`,
    leftOut: [],
    days: eachDay('2020-01-01', '2022-12-31').map((day) => ({ day, tminC: turn, tmaxC: turn + 10 })),
  };
}
