/**
 * A garden file on its way in: what it says, and what it meets.
 */
import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { type FileDifference, importDifferences } from '../../garden/file-difference.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { heldFile } from '../../garden/member-ids.ts';
import type { GardenImport } from '../../steward/doings/steward.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { chosenGarden, type Household } from '../command-line/household.ts';
import { refusal } from '../command-line/refusal.ts';
import { readGarden, readRecord } from './garden-source.ts';

/** A file to be brought in, and the garden it would change. */
export interface Incoming {
  garden: GardenImport;
  /** Absent when the garden is new here. */
  known?: {
    id: string;
    differences: readonly FileDifference[];
    /** The record there is: it stays where the file brings none, or the same one. */
    held: WeatherRecord | undefined;
  };
}

/** Which file, into which garden, on whose word. */
export interface Wanted {
  cwd: string;
  name: string;
  /** The garden's id, where it was named. */
  gardenId: string | undefined;
  prefer: 'reported' | 'file';
}

/**
 * Reads a garden file and holds it against the garden of the same id, where there is one.
 *
 * @throws {InputRefused} when the file or its record cannot be used, or it is another garden's
 */
export async function incoming({ store, steward }: Household, wanted: Wanted): Promise<Incoming> {
  const { cwd, name, gardenId, prefer } = wanted;
  const alone = await readGarden(cwd, name);
  const id = gardenId === undefined ? (alone.garden.id ?? '') : await chosenGarden(steward, gardenId);
  if (!(await steward.gardenIds()).includes(id)) {
    return { garden: importOf(alone, prefer, await readRecord(cwd, name, alone)) };
  }
  const ledger = await store.ledger(id);
  const file = await readGarden(cwd, name, heldFile(ledger));
  if (file.garden.id !== id) throw otherGarden(id, file.garden.id ?? '');
  const held = await store.weatherRecord(id);
  const garden = importOf(file, prefer, await newRecord(wanted, file, held));
  const differences = importDifferences(ledger, file, { prefer, readOn: await steward.today(id) }) ?? [];
  return { garden, known: { id, differences, held } };
}

function importOf(file: GardenFile, prefer: Wanted['prefer'], record: WeatherRecord | undefined): GardenImport {
  return { file, prefer, ...(record === undefined ? {} : { record }) };
}

/** The record beside the file, unless it is the one there is, or is not there while one is. */
async function newRecord({ cwd, name }: Wanted, file: GardenFile, held: WeatherRecord | undefined) {
  const { dailyRecord } = file.climate;
  if (held === undefined || dailyRecord === undefined) return readRecord(cwd, name, file);
  if (!existsSync(resolve(cwd, dirname(name), dailyRecord))) return undefined;
  const record = await readRecord(cwd, name, file);
  const same = JSON.stringify(record?.days) === JSON.stringify(held.days);
  return record === undefined || same ? undefined : { ...record, leftOut: held.leftOut };
}

function otherGarden(id: string, inFile: string) {
  const mend = `Write id: ${id} in the file, or leave --garden out to bring "${inFile}" in as a garden of its own.`;
  return refusal('The garden file was not brought in.', 'garden.id', `"${inFile}" is not the garden "${id}".`, mend);
}
