/**
 * Prints the hindcast of the records in the project, or of another: npm run hindcast -- RECORD.csv --lat 43 --lon -88
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import { PLACES, recordRows } from '../climate/real-data.ts';
import { type Place, type Score, STANDINGS, scoreOf, TARGETS, type Trial, trialsOf } from './hindcast.ts';

const YEARS = Array.from({ length: 30 }, (_, i) => 1991 + i);

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { lat: { type: 'string' }, lon: { type: 'string' } },
});

function ownPlace(file: string): Place {
  const [latitude, longitude] = [Number(values.lat), Number(values.lon)];
  if (!(latitude > 0 && latitude <= 66) || !(Math.abs(longitude) <= 180) || values.lon === undefined) {
    console.error('Give where it was measured, north of the equator, such as: --lat 43.1 --lon -89.4');
    process.exit(2);
  }
  const { rows, problems } = readWeatherFile(readFileSync(file, 'utf8'));
  for (const { where, what } of problems) console.error(`${where}: ${what}`);
  return { name: basename(file), latitude, longitude, rows };
}

function known(name: keyof typeof PLACES): Place {
  return { name, ...PLACES[name], rows: recordRows(name) };
}

function line(label: string, trials: readonly Trial[]): string {
  if (trials.length === 0) return `${label.padEnd(44)} no date was still to come`;
  const { trials: n, insideShare, interval, meanErrorDays, plainMeanErrorDays }: Score = scoreOf(trials);
  const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
  const inside = `${percent(insideShare)} (${percent(interval[0])} to ${percent(interval[1])})`;
  const errors = `off ${meanErrorDays.toFixed(1)} days, plain median ${plainMeanErrorDays.toFixed(1)}`;
  return `${label.padEnd(44)} ${String(n).padStart(4)} dates, inside ${inside.padEnd(22)} ${errors}`;
}

const [file] = positionals;
const places = file === undefined ? [known('milwaukee'), known('bozeman')] : [ownPlace(file)];
const trials = places.flatMap((place) => trialsOf(place, YEARS));
console.log('Between the early and the late day eight dates of ten should fall.\n');
for (const { name } of places) {
  for (const target of TARGETS) {
    for (const standing of STANDINGS) {
      const own = trials.filter((row) => row.place === name && row.target === target && row.standing === standing);
      if (own.length > 0) console.log(line(`${name}, ${target}, from ${standing}`, own));
    }
  }
}
console.log();
for (const target of TARGETS)
  console.log(
    line(
      `pooled, ${target}`,
      trials.filter((row) => row.target === target),
    ),
  );
console.log(line('pooled', trials));
