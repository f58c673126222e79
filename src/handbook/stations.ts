/**
 * Weather stations of the United States with published freeze dates and monthly means, for places with no record of
 * their own: NOAA's normals of 1981–2010 (climate:NCEI-8110), 5,687 stations, a work of the United States government.
 *
 * The table lies packed beside this file; whoever reads files unpacks it and hands the text to
 * {@link parseStationTable}. One line a station; temperatures in tenths of °C, rain in tenths of mm, cells empty where
 * NOAA gives no figure.
 */
import type { MonthDay } from '../measures/days.ts';

/**
 * How full the 30 years behind the freeze dates are: `C` all of them, `S` at most 5 missing and 3 in a row, `R` scaled
 * from a shorter record, `P` at least 10 years.
 */
export type StationFlag = 'C' | 'S' | 'R' | 'P';

/** Twelve monthly means each, January first. Some stations measure no rain. */
export interface StationNormals {
  tmaxC: readonly number[];
  tminC: readonly number[];
  rainMm?: readonly number[];
}

/**
 * One station. The freeze is 0 °C; p50 and p90 keep NOAA's sense: in spring a 90 % chance that the last freeze comes
 * on that day or later (so p90 is the early date), in autumn that the first comes on that day or earlier (so p90 is
 * the late date). Neither p90 is the cautious date.
 */
export interface Station {
  id: string;
  name: string;
  /** Two-letter state or territory. */
  state: string;
  latitude: number;
  longitude: number;
  elevationM: number;
  lastSpringP50?: MonthDay;
  lastSpringP90?: MonthDay;
  firstFallP50?: MonthDay;
  firstFallP90?: MonthDay;
  /** Length of the freeze-free season reached in half of years, and in nine years of ten. */
  seasonDaysP50: number;
  seasonDaysP90: number;
  normals: StationNormals;
  flag: StationFlag;
  /** A freeze can come in any month: NOAA gives no dates, only the length of the season. */
  yearRoundFreeze: boolean;
  /** A spring date in December or an autumn date after New Year: too mild a place to plan from these dates. */
  wrapsYear: boolean;
}

/** First columns of the three runs of twelve monthly figures, and the two columns that close a line. */
const TMAX = 12;
const TMIN = 24;
const RAIN = 36;
const FLAG = 48;
const WRAPS_YEAR = 49;
const COLUMNS = 50;
const MONTHS = 12;

/**
 * The stations of the unpacked table, in its order (by id).
 *
 * @throws Error naming the line, when a line is not one of the table's
 */
export function parseStationTable(text: string): Station[] {
  const lines = text.split('\n').slice(1);
  return lines.flatMap((line, index) => (line === '' ? [] : [stationOf(line.split(','), index + 2)]));
}

function stationOf(cells: readonly string[], line: number): Station {
  if (cells.length !== COLUMNS) throw damaged(line, `${cells.length} columns instead of ${COLUMNS}`);
  const [id = '', name = '', state = '', latitude, longitude, elevation, ...dates] = cells;
  return {
    id,
    name,
    state,
    latitude: figure(latitude, line),
    longitude: figure(longitude, line),
    elevationM: figure(elevation, line),
    ...freezeDates(dates),
    seasonDaysP50: figure(dates[4], line),
    seasonDaysP90: figure(dates[5], line),
    normals: normalsOf(cells, line),
    flag: flagOf(cells[FLAG], line),
    yearRoundFreeze: dates[0] === '',
    wrapsYear: cells[WRAPS_YEAR] === '1',
  };
}

function freezeDates([lastSpringP50, lastSpringP90, firstFallP50, firstFallP90]: readonly string[]) {
  if (!lastSpringP50 || !lastSpringP90 || !firstFallP50 || !firstFallP90) return {};
  return { lastSpringP50, lastSpringP90, firstFallP50, firstFallP90 };
}

function normalsOf(cells: readonly string[], line: number): StationNormals {
  const temperatures = { tmaxC: monthly(cells, TMAX, line), tminC: monthly(cells, TMIN, line) };
  return cells[RAIN] === '' ? temperatures : { ...temperatures, rainMm: monthly(cells, RAIN, line) };
}

/** Twelve figures from tenths. */
function monthly(cells: readonly string[], first: number, line: number): number[] {
  return cells.slice(first, first + MONTHS).map((cell) => figure(cell, line) / 10);
}

function figure(cell: string | undefined, line: number): number {
  const value = cell === '' ? Number.NaN : Number(cell);
  if (Number.isNaN(value)) throw damaged(line, `"${cell}" where a figure belongs`);
  return value;
}

function flagOf(cell: string | undefined, line: number): StationFlag {
  if (cell === 'C' || cell === 'S' || cell === 'R' || cell === 'P') return cell;
  throw damaged(line, `the flag "${cell}" instead of C, S, R or P`);
}

function damaged(line: number, what: string): Error {
  return new Error(`Station table, line ${line}: ${what}. Put the table back as it was shipped.`);
}
