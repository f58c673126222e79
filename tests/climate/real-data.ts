/**
 * Real weather for tests: the daily records and the station table carried in the project.
 */
import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Climate } from '../../src/climate/climate.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { parseStationTable, type Station } from '../../src/handbook/stations.ts';

const ROOT = new URL('../../', import.meta.url);

/** Where the two records were measured (NCEI 1981–2010 station list). */
export const PLACES = {
  milwaukee: { latitude: 42.955, longitude: -87.9044, elevationM: 204.2 },
  bozeman: { latitude: 45.6622, longitude: -111.0453, elevationM: 1497.5 },
} as const;

export type RecordName = keyof typeof PLACES;

/** A place whose weather is taken as it is measured. */
export const NO_OFFSETS = { frostOffsetDays: 0, tempOffsetC: 0 } as const;

function unpacked(path: string): string {
  return gunzipSync(readFileSync(new URL(path, ROOT))).toString('utf8');
}

/** Daily rows of a record file, read without any of the project's own reading. */
export function rowsOf(path: string): DailyWeather[] {
  const figure = (cell: string | undefined): number | undefined => (cell ? Number(cell) : undefined);
  return unpacked(path)
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [day = '', ...cells] = line.split(',');
      const [tminC, tmaxC, rainMm, newSnowMm, snowDepthMm] = cells.map(figure);
      return {
        day,
        ...(tminC === undefined ? {} : { tminC }),
        ...(tmaxC === undefined ? {} : { tmaxC }),
        ...(rainMm === undefined ? {} : { rainMm }),
        ...(newSnowMm === undefined ? {} : { newSnowMm }),
        ...(snowDepthMm === undefined ? {} : { snowDepthMm }),
      };
    });
}

/** The daily rows of one of the two reference records, July 1960 to December 2020. */
export function recordRows(name: RecordName): DailyWeather[] {
  return rowsOf(`tests/references/data/${name}-1960-2020.csv.gz`);
}

/** The climate of a reference record over thirty seasons, up to and with one. */
export function recordClimate(name: RecordName, lastSeason: 2010 | 2020): Climate {
  return climateFromRecord({
    ...PLACES[name],
    ...NO_OFFSETS,
    rows: recordRows(name),
    origin: name,
    before: lastSeason + 1,
  });
}

/** The same climate with its daily seasons taken away, so that only monthly means are left. */
export function withoutSeasons(climate: Climate): Climate {
  return { ...climate, seasons: [] };
}

/** All stations of the table. */
export function allStations(): Station[] {
  return parseStationTable(unpacked('src/handbook/station-table.csv.gz'));
}

/** The station with an id. */
export function stationById(id: string): Station {
  const station = allStations().find((each) => each.id === id);
  if (!station) throw new Error(`No station ${id} in the table.`);
  return station;
}
