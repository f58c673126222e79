/**
 * The built-in station table, as it lies packed beside the handbook.
 */
import { readFile } from 'node:fs/promises';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import { parseStationTable, type Station } from '../handbook/stations.ts';

const STATION_TABLE = new URL('../handbook/station-table.csv.gz', import.meta.url);

let table: Promise<readonly Station[]> | undefined;

/** Every station of the built-in table. Read once, then kept. */
export function readStationTable(): Promise<readonly Station[]> {
  table ??= unpack();
  return table;
}

async function unpack(): Promise<readonly Station[]> {
  const packed = await readFile(STATION_TABLE);
  const text = await promisify(gunzip)(packed);
  return parseStationTable(text.toString('utf8'));
}
