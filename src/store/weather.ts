/**
 * Weather on disk: the long record a garden's climate is worked out from, and the log of its own days.
 */
import { z } from 'zod';
import type { DailyWeather } from '../garden/weather.ts';
import type { Day } from '../measures/days.ts';
import { raiseFactsVersion } from './gardens.ts';
import { parseJson } from './json.ts';
import { type Database, type WeatherRow, writing } from './tables.ts';

/** A long daily record, oldest day first. */
export interface WeatherRecord {
  /** Where it was measured and by whom, one sentence for the reader. */
  origin: string;
  /** Seasons kept out of the odds, each by the calendar year it starts in. */
  leftOut: readonly number[];
  days: readonly DailyWeather[];
}

/** A day of this garden's own log: seen, or only expected. A day may have a row of each. */
export interface LoggedWeather extends DailyWeather {
  kind: 'observed' | 'expected';
}

/** Rows sent in one statement: 8 values each stay well under the 32,766 SQLite takes at once. */
const ROWS_AT_ONCE = 500;

const leftOutSchema = z.array(z.number().int());

/** A garden's long record, if it has one. */
export async function weatherRecord(db: Database, gardenId: string): Promise<WeatherRecord | undefined> {
  const about = await db.selectFrom('records').selectAll().where('garden_id', '=', gardenId).executeTakeFirst();
  if (!about) return undefined;
  const rows = await db
    .selectFrom('record_weather')
    .selectAll()
    .where('garden_id', '=', gardenId)
    .orderBy('day')
    .execute();
  const leftOut = parseJson(leftOutSchema, about.left_out, `weather record of ${gardenId}`);
  return { origin: about.origin, leftOut, days: rows.map(weatherOf) };
}

/** Puts a long record in place of the one there was. Returns the new facts version. */
export function replaceWeatherRecord(db: Database, gardenId: string, record: WeatherRecord): Promise<number> {
  return writing(db, async (transaction) => {
    const version = await raiseFactsVersion(transaction, gardenId);
    await transaction.deleteFrom('record_weather').where('garden_id', '=', gardenId).execute();
    await transaction.deleteFrom('records').where('garden_id', '=', gardenId).execute();
    await transaction
      .insertInto('records')
      .values({ garden_id: gardenId, origin: record.origin, left_out: JSON.stringify(record.leftOut) })
      .execute();
    const rows = record.days.map((day) => rowOf(gardenId, day));
    for (const batch of batches(rows)) await transaction.insertInto('record_weather').values(batch).execute();
    return version;
  });
}

/** The days of a garden's own log from one day on, in order. */
export async function weatherLog(db: Database, gardenId: string, from: Day): Promise<LoggedWeather[]> {
  const rows = await db
    .selectFrom('observed_weather')
    .selectAll()
    .where('garden_id', '=', gardenId)
    .where('day', '>=', from)
    .orderBy('day')
    .orderBy('kind')
    .execute();
  return rows.map((row) => ({ ...weatherOf(row), kind: row.kind }));
}

/**
 * Writes days into a garden's own log. A row of the same day and kind is replaced whole; an expected day never touches
 * an observed one. Returns the new facts version.
 */
export function logWeather(db: Database, gardenId: string, days: readonly LoggedWeather[]): Promise<number> {
  return writing(db, async (transaction) => {
    const version = await raiseFactsVersion(transaction, gardenId);
    const rows = days.map((day) => ({ ...rowOf(gardenId, day), kind: day.kind }));
    for (const batch of batches(rows)) {
      await transaction
        .insertInto('observed_weather')
        .values(batch)
        .onConflict((conflict) =>
          conflict.columns(['garden_id', 'day', 'kind']).doUpdateSet(({ ref }) => ({
            tmin_c: ref('excluded.tmin_c'),
            tmax_c: ref('excluded.tmax_c'),
            rain_mm: ref('excluded.rain_mm'),
            new_snow_mm: ref('excluded.new_snow_mm'),
            snow_depth_mm: ref('excluded.snow_depth_mm'),
          })),
        )
        .execute();
    }
    return version;
  });
}

function rowOf(gardenId: string, weather: DailyWeather): WeatherRow {
  return {
    garden_id: gardenId,
    day: weather.day,
    tmin_c: weather.tminC ?? null,
    tmax_c: weather.tmaxC ?? null,
    rain_mm: weather.rainMm ?? null,
    new_snow_mm: weather.newSnowMm ?? null,
    snow_depth_mm: weather.snowDepthMm ?? null,
  };
}

function weatherOf(row: WeatherRow): DailyWeather {
  return {
    day: row.day,
    ...(row.tmin_c === null ? {} : { tminC: row.tmin_c }),
    ...(row.tmax_c === null ? {} : { tmaxC: row.tmax_c }),
    ...(row.rain_mm === null ? {} : { rainMm: row.rain_mm }),
    ...(row.new_snow_mm === null ? {} : { newSnowMm: row.new_snow_mm }),
    ...(row.snow_depth_mm === null ? {} : { snowDepthMm: row.snow_depth_mm }),
  };
}

function* batches<Row>(rows: readonly Row[]): Generator<readonly Row[]> {
  for (let start = 0; start < rows.length; start += ROWS_AT_ONCE) yield rows.slice(start, start + ROWS_AT_ONCE);
}
