/**
 * NOAA's GHCN-Daily as it is handed out: `.dly`, a line a month and element with fixed columns, and the by-station CSV, a
 * line a day and element. Form, units and flags by the readme of the data set: TMAX and TMIN in tenths of °C, PRCP
 * in tenths of a millimetre, SNOW and SNWD in millimetres; −9999 is missing; a quality flag that is not empty says that a
 * check failed; the measurement flag P says that nothing was there and nought was presumed.
 */
import { isDay } from '../measures/days.ts';
import type { DailyWeather } from './weather.ts';
import { extremesProblem, isPossible, type Measured, WEATHER_LIMITS } from './weather-limits.ts';
import { FileProblems, tooManyDays, unusable, type WeatherFile, type WeatherReader } from './weather-rows.ts';

/** The elements that are read, and how many of their units make one of ours. */
const ELEMENTS: ReadonlyMap<string, { holds: Measured; per: number }> = new Map([
  ['TMIN', { holds: 'tminC', per: 10 }],
  ['TMAX', { holds: 'tmaxC', per: 10 }],
  ['PRCP', { holds: 'rainMm', per: 10 }],
  ['SNOW', { holds: 'newSnowMm', per: 1 }],
  ['SNWD', { holds: 'snowDepthMm', per: 1 }],
]);

const MISSING = -9999;
const PRESUMED_NOUGHT = 'P';

/** Columns of a `.dly` line: what stands before its days, and the width of one day's value with its three flags. */
const DLY = { lead: 21, day: 8, value: 5 } as const;
const DLY_LEAD = /^([A-Z0-9_-]{11})(\d{4})(\d{2})([A-Z0-9]{4})/;
const CSV_LEAD = /^"?([A-Z0-9_-]{11})"?,"?(\d{8})"?,"?([A-Z0-9]{4})"?,/;
const CSV_HEADER = /^"?ID"?,"?(DATE|YEAR\/MONTH\/DAY)"?,"?ELEMENT"?,/i;

/** Whether a first line is that of a `.dly` file. */
export function isGhcnDly(line: string): boolean {
  return DLY_LEAD.test(line) && !line.includes(',');
}

/** Whether a first line is that of a by-station CSV, with its header or without. */
export function isGhcnCsv(line: string): boolean {
  return CSV_LEAD.test(line) || CSV_HEADER.test(line);
}

/** One value as the file has it. */
interface Reading {
  line: number;
  day: string;
  element: string;
  text: string;
  measurement: string;
  quality: string;
}

/** Reads a `.dly` file, of which some lines have gone by. */
export function ghcnDlyReader(linesBefore: number): WeatherReader {
  return reading(linesBefore, (line, number) => {
    const [lead, , year, month, element = ''] = DLY_LEAD.exec(line) ?? [];
    if (lead === undefined) return undefined;
    const length = Math.ceil((line.length - DLY.lead) / DLY.day);
    return Array.from({ length }, (_, at) => {
      const from = DLY.lead + DLY.day * at;
      const flags = line.slice(from + DLY.value, from + DLY.day);
      return {
        line: number,
        day: `${year}-${month}-${String(at + 1).padStart(2, '0')}`,
        element,
        text: line.slice(from, from + DLY.value).trim(),
        measurement: flags.charAt(0),
        quality: flags.charAt(1),
      };
    });
  });
}

/** Reads a by-station CSV: id, date, element, value, three flags and the hour. */
export function ghcnCsvReader(linesBefore: number): WeatherReader {
  return reading(linesBefore, (line, number) => {
    if (number === linesBefore + 1 && CSV_HEADER.test(line)) return [];
    const [, date = '', element = '', value = '', measurement = '', quality = ''] = line
      .split(',')
      .map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
    if (!CSV_LEAD.test(line)) return undefined;
    const day = `${date.slice(0, 4)}-${date.slice(4, 6)}-${date.slice(6)}`;
    return [{ line: number, day, element, text: value, measurement, quality }];
  });
}

/** What has been read so far. */
interface Gathering {
  days: Map<string, DailyWeather>;
  /** The line each day's values end on. */
  lines: Map<string, number>;
  duplicates: Set<string>;
  problems: FileProblems;
  doubted: number;
}

/** Reads lines one after another, each by what makes readings of it; nothing for what is no line of such a file. */
function reading(
  linesBefore: number,
  read: (line: string, number: number) => readonly Reading[] | undefined,
): WeatherReader {
  const into: Gathering = {
    days: new Map(),
    lines: new Map(),
    duplicates: new Set(),
    problems: new FileProblems(),
    doubted: 0,
  };
  let [station, number]: [string | undefined, number] = [undefined, linesBefore];
  let broken: WeatherFile | undefined;
  const takeLine = (line: string) => {
    const where = `line ${number}`;
    const readings = read(line, number);
    if (readings === undefined) {
      const what = `"${line.slice(0, 40)}" is no line of GHCN-Daily.`;
      into.problems.add({ where, what, mend: 'Take the line out, or fetch the file again.' });
      return;
    }
    const id = readings.length === 0 ? undefined : line.replaceAll('"', '').slice(0, 11);
    station ??= id;
    if (id !== undefined && id !== station) {
      broken = severalStations(where, station, id);
      return;
    }
    for (const one of readings) take(into, one);
    const many = tooManyDays(into.days.size, number);
    if (many !== undefined) broken = unusable(many);
  };
  return {
    take(lines) {
      for (const line of lines) {
        number += 1;
        if (line.trim() !== '') takeLine(line);
        if (broken !== undefined) return false;
      }
      return true;
    },
    end: () => broken ?? finished(into),
  };
}

function severalStations(where: string, first: string | undefined, other: string): WeatherFile {
  const what = `A second station begins here: ${other} after ${first}.`;
  return unusable({ where, what, mend: 'Give the lines of one station; two laid together are of no place.' });
}

function take(into: Gathering, { line, day, element, text, measurement, quality }: Reading): void {
  const known = ELEMENTS.get(element);
  if (known === undefined || text === '' || Number(text) === MISSING) return;
  const where = `line ${line}`;
  if (quality.trim() !== '' || measurement === PRESUMED_NOUGHT) {
    into.doubted += 1;
    return;
  }
  if (!isDay(day)) {
    into.problems.add({ where, what: `"${day.slice(0, 40)}" is not a real date.`, mend: 'Take the value out.' });
    return;
  }
  const { holds, per } = known;
  const value = Number(text) / per;
  if (!/^-?\d+$/.test(text) || !isPossible(holds, value)) {
    into.problems.add({ where, what: `${element} of ${day} is "${text.slice(0, 40)}".`, mend: mendOf(holds, per) });
    return;
  }
  const row = into.days.get(day) ?? { day };
  if (row[holds] !== undefined) into.duplicates.add(`${day} ${element}`);
  row[holds] = value;
  into.days.set(day, row);
  into.lines.set(day, line);
}

function mendOf(holds: Measured, per: number): string {
  const { least, most } = WEATHER_LIMITS[holds];
  return `Give a whole number from ${least * per} to ${most * per}, or ${MISSING} where it is missing.`;
}

function finished({ days, lines, duplicates, problems, doubted }: Gathering): WeatherFile {
  const rows: DailyWeather[] = [];
  for (const row of [...days.values()].sort((a, b) => (a.day < b.day ? -1 : 1))) {
    const crossed = extremesProblem(row, `line ${lines.get(row.day)}, ${row.day}`);
    if (crossed === undefined) rows.push(row);
    else problems.add(crossed);
  }
  return { rows, duplicates: duplicates.size, doubted, ...problems.told() };
}
