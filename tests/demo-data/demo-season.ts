/**
 * The demo garden on an anchor day, with its borrowed record and climate.
 */
import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { demoGardenFile } from '../../demo-data/demo-garden.ts';
import { demoWeather } from '../../demo-data/demo-weather.ts';
import type { Climate } from '../../src/climate/climate.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { gardenOfFile } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import type { Day } from '../../src/measures/days.ts';

const recordPath = new URL(`../../demo-data/weather/${demoWeather.file}`, import.meta.url);

/** The middle of every month of a plain year, a leap day, and both sides of New Year. */
export const ANCHORS: readonly Day[] = [
  ...Array.from({ length: 12 }, (_, month) => `2027-${String(month + 1).padStart(2, '0')}-15`),
  '2028-02-29',
  '2027-12-31',
  '2028-01-01',
];

/** The borrowed record. */
export const demoRecord: readonly DailyWeather[] = readWeatherFile(
  gunzipSync(readFileSync(recordPath)).toString('utf8'),
).rows;

/** The demo garden as it is created on a day. */
export function demoGarden(anchor: Day): Garden {
  return gardenOfFile(checkGardenFile(demoGardenFile(anchor)), anchor, anchor);
}

/** The climate the demo is planned by, the borrowed season left out. */
export const demoClimate: Climate = climateFromRecord({
  latitude: 43.2,
  longitude: -88.1,
  rows: demoRecord,
  origin: demoWeather.origin,
  leaveOut: demoWeather.leftOut,
  frostOffsetDays: 0,
  tempOffsetC: 0,
});
