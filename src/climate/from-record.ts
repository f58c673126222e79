/**
 * A garden's climate from a daily record: the strongest basis, each season counted by itself.
 */
import { InputRefused } from '../garden/problem.ts';
import type { DailyWeather } from '../garden/weather.ts';
import { MONTHS } from '../measures/quantity.ts';
import type { Climate, FreezeEvent, FreezeLimitF, MonthlyNormals, SeasonTurn, SeasonWeather } from './climate.ts';
import { countFreezes, seasonFreeze } from './freeze-record.ts';
import { freezeTable } from './freeze-table.ts';
import { meanOf } from './quantiles.ts';
import { monthlyMeans } from './record-normals.ts';
import { seasonOf, seasonTurnOf } from './season.ts';
import { seasonsOfRows } from './season-weather.ts';
import { offsetNotes } from './site.ts';
import { hardinessZoneOf, WINTERS_NEEDED, yearlyMinima } from './zones.ts';

/** Seasons a climate is counted from: the length of a published normal period (agro:S2). */
const SEASONS_WANTED = 30;

/** Fewest seasons that make odds at all, and fewest that make firm ones. House defaults. */
const SEASONS_NEEDED = 10;
const SEASONS_FOR_FIRM_ODDS = 20;

/** Share of a season's minima that must be there for it to be taken up. House default. */
const LEAST_COMPLETE = 0.5;

/** A daily record, with the garden's place and its difference from the place of the record. */
interface RecordInput {
  latitude: number;
  longitude: number;
  rows: readonly DailyWeather[];
  /** Where the record comes from, one sentence. */
  origin: string;
  seasonsWanted?: number;
  /** Season from which on nothing is taken: usually the one being planned. */
  before?: number;
  /** Seasons to leave out. */
  leaveOut?: readonly number[];
  /** Days the freeze-free season is shorter at each end than at the record. */
  frostOffsetDays: number;
  /** Degrees the garden is warmer than the record, added to every temperature before anything is counted. */
  tempOffsetC: number;
}

/**
 * The climate of a daily record: its last thirty seasons, or as many as are wanted.
 *
 * @throws InputRefused below ten usable seasons, and where a month has no temperature in any of them
 */
export function climateFromRecord(input: RecordInput): Climate {
  const { latitude, longitude, origin, rows, frostOffsetDays, tempOffsetC } = input;
  const turn = seasonTurnOf(latitude);
  const allowed = seasonsOfRows(turn, rows, tempOffsetC).filter(({ season }) => isAllowed(season, input));
  const seasons = allowed.filter(isUsable).slice(-(input.seasonsWanted ?? SEASONS_WANTED));
  if (seasons.length < SEASONS_NEEDED) throw tooShort(seasons.length, rows);
  const used = new Set(seasons.map(({ season }) => season));
  const winters = yearlyMinima(allowed).filter(({ season }) => used.has(season));
  const zone = zoneOf(winters.map(({ tminC }) => tminC));
  const normals = monthlyMeans(
    turn,
    seasons,
    rows.filter(({ day }) => used.has(seasonOf(turn, day))),
  );
  refuseUnmeasured(normals);
  return {
    basis: 'daily-record',
    origin,
    confidence: 'recorded',
    latitude,
    longitude,
    seasonTurn: turn,
    freezes: freezeTable((limitF, event) =>
      countFreezes(turn, seasons, { event, limitF, offsetDays: frostOffsetDays }),
    ),
    seasons,
    logged: [],
    frostOffsetDays,
    normals,
    ...(zone ? { zone } : {}),
    notes: notesOn(turn, seasons, input, zone !== undefined),
  };
}

function isAllowed(season: number, { before = Number.POSITIVE_INFINITY, leaveOut = [] }: RecordInput): boolean {
  return season < before && !leaveOut.includes(season);
}

function isUsable({ tminC }: SeasonWeather): boolean {
  return tminC.filter((temp) => temp !== undefined).length >= LEAST_COMPLETE * tminC.length;
}

function tooShort(seasons: number, rows: readonly DailyWeather[]): InputRefused {
  return new InputRefused('The daily record is too short to work out a climate.', [
    {
      where: 'climate.dailyRecord',
      what: `${rows.length} rows hold ${seasons} usable seasons; ${SEASONS_NEEDED} are needed.`,
      mend: 'Give a longer record, or name a station, for example "station: USW00014839".',
    },
  ]);
}

/** What was never measured in a month cannot be reckoned with, in whichever year. */
function refuseUnmeasured(normals: MonthlyNormals): void {
  const problems = (['tmaxC', 'tminC'] as const).flatMap((field) => {
    const months = normals[field].flatMap((tempC, month) => (Number.isNaN(tempC) ? (MONTHS[month] ?? []) : []));
    if (months.length === 0) return [];
    const when = months.length === MONTHS.length ? 'any month' : months.join(', ');
    const what = `It holds no ${TOLD_MISSING[field]} of ${when}.`;
    const mend = 'Give a record with highs and lows of the whole year, or name a station.';
    return [{ where: 'climate.dailyRecord', what, mend }];
  });
  if (problems.length > 0) throw new InputRefused('No climate can be worked out from the daily record.', problems);
}

function zoneOf(minimaC: readonly number[]): Climate['zone'] | undefined {
  if (minimaC.length < WINTERS_NEEDED) return undefined;
  const meanYearlyMinimumC = meanOf(minimaC);
  return { zone: hardinessZoneOf(meanYearlyMinimumC), meanYearlyMinimumC, winters: minimaC.length };
}

function notesOn(turn: SeasonTurn, seasons: readonly SeasonWeather[], input: RecordInput, zoned: boolean): string[] {
  const [first, last] = [seasons[0]?.season, seasons.at(-1)?.season];
  const notes = [`Counted from ${seasons.length} seasons, ${first} to ${last}.`];
  if (seasons.length < SEASONS_FOR_FIRM_ODDS)
    notes.push(`Fewer than ${SEASONS_FOR_FIRM_ODDS} seasons: the dates of one year in ten are rough.`);
  const missing = missingWords(seasons);
  if (missing !== '')
    notes.push(`Not measured in them: ${missing}. Such days are left out or said, never taken for nought.`);
  const gaps = seasons.filter((season) => hasFreezeGap(turn, season)).map(({ season }) => season);
  if (gaps.length > 0)
    notes.push(
      `Days are missing where a freeze date could have been, so these seasons count in part: ${gaps.join(', ')}.`,
    );
  if (!zoned) notes.push(`Fewer than ${WINTERS_NEEDED} whole winters: no hardiness zone.`);
  return [...notes, ...offsetNotes(input)];
}

/** Measurements whose absence is told, with what they are called; snow is reckoned where it was not measured. */
const TOLD_MISSING = { tminC: 'lows', tmaxC: 'highs', rainMm: 'days of rain' } as const;

/** How many of each are missing; empty where none is, or where one was never measured at all. */
function missingWords(seasons: readonly SeasonWeather[]): string {
  return (['tminC', 'tmaxC', 'rainMm'] as const)
    .flatMap((field) => {
      const values = seasons.flatMap((season) => season[field]);
      const missing = values.filter((value) => value === undefined).length;
      return missing === 0 || missing === values.length ? [] : [`${missing} ${TOLD_MISSING[field]}`];
    })
    .join(', ');
}

const LIMITS: readonly FreezeLimitF[] = [32, 28, 24];
const EVENTS: readonly FreezeEvent[] = ['last-spring', 'first-autumn'];

function hasFreezeGap(turn: SeasonTurn, season: SeasonWeather): boolean {
  return LIMITS.some((limitF) => EVENTS.some((event) => seasonFreeze(turn, season, event, limitF) === 'unknown'));
}
