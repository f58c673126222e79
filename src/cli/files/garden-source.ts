/**
 * A garden file with the weather record it names.
 */
import { basename, dirname, resolve } from 'node:path';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { HeldFile } from '../../garden/ids.ts';
import { readGardenFile } from '../../garden/read-garden-file.ts';
import { createSteward } from '../../steward/create-steward.ts';
import type { GardenImport, GardenView } from '../../steward/doings/steward.ts';
import { recordOf } from '../../steward/files/record-join.ts';
import type { Clock } from '../../steward/planning/planner.ts';
import { readStationTable } from '../../store/station-file.ts';
import { openStore } from '../../store/store.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { BY } from '../command-line/household.ts';
import { counted } from '../text/counted.ts';
import { readText } from './files.ts';
import { readWeather } from './weather-source.ts';

/** Reads a garden file; items without an id take that of the item they name in the file held before. */
export async function readGarden(cwd: string, name: string, existing?: HeldFile): Promise<GardenFile> {
  const stations = new Set((await readStationTable()).map(({ id }) => id));
  return readGardenFile(await readText(cwd, name), existing, stations);
}

/** The weather record a garden file names, read from beside it; nothing where it names none. */
export async function readRecord(cwd: string, name: string, file: GardenFile): Promise<WeatherRecord | undefined> {
  const { dailyRecord } = file.climate;
  if (dailyRecord === undefined) return undefined;
  const { days } = await readWeather(dirname(resolve(cwd, name)), dailyRecord, false);
  return recordOf(basename(dailyRecord), days);
}

/**
 * Brings a garden into a store that is gone afterwards, to find everything that would stand in its way.
 *
 * @throws {InputRefused} when it could not be brought in
 */
export async function tryGarden(garden: GardenImport, clock: Clock): Promise<GardenView> {
  const store = await openStore({ file: ':memory:', now: clock.now() });
  const steward = createSteward({ store, clock });
  try {
    const { gardenId } = await steward.importGarden(garden, BY);
    return await steward.view(gardenId);
  } finally {
    await steward.close();
  }
}

/** What a garden holds, in a line. */
export function gardenSummary({ garden, plan }: GardenView): string {
  const { beds, plantings, stands, bins, piles } = garden;
  const counts = [
    counted(beds.length, 'bed'),
    counted(plantings.length, 'planting'),
    counted(stands.length, 'cover stand'),
    counted(bins.length, 'bin'),
    counted(piles.length, 'pile'),
  ];
  const open = plan.tasks.filter(({ state }) => state === 'open').length;
  return `${garden.name} (${garden.id}): ${counts.join(', ')}; ${counted(open, 'task')} in the coming year.`;
}
