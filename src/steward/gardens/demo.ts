/**
 * The demo garden laid into an empty household: an invented garden around the present day, on a real weather record.
 */
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { demoGardenFile } from '../../../demo-data/demo-garden.ts';
import { DEMO_WEATHER_YEAR, demoWeather, shiftedWeather } from '../../../demo-data/demo-weather.ts';
import { firstFree } from '../../garden/ids.ts';
import { checkGardenFile } from '../../garden/read-garden-file.ts';
import type { DailyWeather, LoggedDay } from '../../garden/weather.ts';
import { readWeatherFile } from '../../garden/weather-file.ts';
import type { Steward } from '../doings/steward.ts';
import { type Clock, dayIn } from '../planning/planner.ts';
import { idsTaken } from '../set-up/set-up.ts';

const WEATHER_FOLDER = new URL('../../../demo-data/weather/', import.meta.url);

/** Who lays the demo garden, as its ledger keeps it. */
export const BY_DEMO = 'demo';

/** What laying the demo garden works with. */
export interface DemoRoom {
  steward: Steward;
  clock: Clock;
}

/**
 * Lays the demo garden around the garden's own day: its beds and piles, the record its climate is worked out from, a
 * past year of that record as this year's own weather, and one feed.
 *
 * @returns the garden's id
 */
export async function layDemo({ steward, clock }: DemoRoom): Promise<string> {
  const now = clock.now();
  const { timeZone } = checkGardenFile(demoGardenFile(now.slice(0, 10))).garden;
  const anchor = clock.today ?? dayIn(timeZone, now);
  const days = await readRecord();
  const file = checkGardenFile(demoGardenFile(anchor));
  const id = firstFree(file.garden.id ?? '', await idsTaken(steward));
  const record = { origin: demoWeather.origin, leftOut: demoWeather.leftOut, days };
  const weather = shiftedWeather(days, { year: DEMO_WEATHER_YEAR, anchor }).map(asSeen);
  const { gardenId } = await steward.importGarden(
    { file: { ...file, garden: { ...file.garden, id } }, prefer: 'file', record, weather },
    BY_DEMO,
  );
  await steward.addFeed(gardenId, 'Everything');
  return gardenId;
}

function asSeen(row: DailyWeather): LoggedDay {
  return { ...row, kind: 'observed' };
}

async function readRecord(): Promise<DailyWeather[]> {
  const packed = await readFile(new URL(demoWeather.file, WEATHER_FOLDER));
  const { rows, problems } = readWeatherFile((await promisify(gunzip)(packed)).toString('utf8'));
  const [problem] = problems;
  if (problem === undefined) return rows;
  throw new Error(`${demoWeather.file}, ${problem.where}: ${problem.what} Put the file back as it was shipped.`);
}
