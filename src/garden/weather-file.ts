/**
 * From the text of a daily weather record to its days. Three forms are known, each by its first line: the shared CSV
 * (weather-csv.ts) and the two of NOAA's GHCN-Daily (ghcn-daily.ts). Every problem is reported with its line; a row with
 * a problem is left out whole.
 */
import { ghcnCsvReader, ghcnDlyReader, isGhcnCsv, isGhcnDly } from './ghcn-daily.ts';
import { weatherCsvReader } from './weather-csv.ts';
import {
  LINES_AT_ONCE,
  MOST_CHARACTERS,
  type ReadSoFar,
  unusable,
  type WeatherFile,
  type WeatherReader,
  type WeatherUse,
} from './weather-rows.ts';

/** Reads a weather file. Of several rows with one date the last counts. */
export function readWeatherFile(text: string, use: WeatherUse = 'record'): WeatherFile {
  const pieces = weatherFilePieces(text, use);
  for (;;) {
    const piece = pieces.next();
    if (piece.done === true) return piece.value;
  }
}

/** The same, some lines at a time, for whoever has others to answer meanwhile. */
export function* weatherFilePieces(text: string, use: WeatherUse): Generator<ReadSoFar, WeatherFile> {
  const reader = weatherReader(use);
  const lines = text.split(/\r?\n/);
  for (let at = 0; at < lines.length; at += LINES_AT_ONCE) {
    yield { lines: at, of: lines.length };
    if (!reader.take(lines.slice(at, at + LINES_AT_ONCE))) break;
  }
  return reader.end();
}

/** Reads a file whose lines come one after another: nothing is held of them but their days. */
export function weatherReader(use: WeatherUse): WeatherReader {
  let reader: WeatherReader | undefined;
  let [blank, taken] = [0, 0];
  let broken: WeatherFile | undefined;
  return {
    take(lines) {
      const long = lines.findIndex((line) => line.length > MOST_CHARACTERS);
      if (long !== -1) broken = unusable({ ...LONG_LINE, where: `line ${taken + long + 1}` });
      taken += lines.length;
      if (broken !== undefined) return false;
      if (reader !== undefined) return reader.take(lines);
      const first = lines.findIndex((line) => line.replace(BYTE_ORDER_MARK, '').trim() !== '');
      blank += first === -1 ? lines.length : first;
      if (first === -1) return true;
      const head = (lines[first] ?? '').replace(BYTE_ORDER_MARK, '');
      reader = readerFor(head.trim(), use, blank);
      return reader.take([head, ...lines.slice(first + 1)]);
    },
    end: () => broken ?? (reader ?? weatherCsvReader(use, 0)).end(),
  };
}

const LONG_LINE = {
  what: `It has more than ${MOST_CHARACTERS} characters.`,
  mend: 'Give a line a day, as CSV or GHCN-Daily.',
};

const BYTE_ORDER_MARK = /^\uFEFF/;

function readerFor(first: string, use: WeatherUse, linesBefore: number): WeatherReader {
  if (isGhcnDly(first)) return ghcnDlyReader(linesBefore);
  if (isGhcnCsv(first)) return ghcnCsvReader(linesBefore);
  return weatherCsvReader(use, linesBefore);
}
