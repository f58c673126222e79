/**
 * From the text of a daily weather record to its days. Three forms are known, each by its first line: the shared CSV
 * (weather-csv.ts) and the two of NOAA's GHCN-Daily (ghcn-daily.ts). Every problem is reported with its line; a row with
 * a problem is left out whole.
 */
import { isGhcnCsv, isGhcnDly, readGhcnCsv, readGhcnDly } from './ghcn-daily.ts';
import { readWeatherCsv } from './weather-csv.ts';
import type { ReadSoFar, WeatherFile, WeatherUse } from './weather-rows.ts';

/** Reads a weather file. Of several rows with one date the last counts. */
export function readWeatherFile(text: string, use: WeatherUse = 'record'): WeatherFile {
  const pieces = weatherFilePieces(text, use);
  for (;;) {
    const piece = pieces.next();
    if (piece.done === true) return piece.value;
  }
}

/** The same, some lines at a time, for whoever has others to answer meanwhile. */
export function weatherFilePieces(text: string, use: WeatherUse): Generator<ReadSoFar, WeatherFile> {
  const plain = text.replace(/^\uFEFF/, '');
  const first = /\S.*/.exec(plain)?.[0].trimEnd() ?? '';
  if (isGhcnDly(first)) return readGhcnDly(plain);
  if (isGhcnCsv(first)) return readGhcnCsv(plain);
  return readWeatherCsv(plain, use);
}
