/**
 * Weather on disk: the long record a garden's climate is worked out from.
 */
import { z } from 'zod';
import type { DailyWeather } from '../garden/weather.ts';
import { withoutAbsent } from '../garden/without-absent.ts';
import { isDay } from '../measures/days.ts';
import { factsVersion, raiseFactsVersion } from './gardens.ts';
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

/** Rows sent in one statement: 7 values each stay well under the 32,766 SQLite takes at once. */
const ROWS_AT_ONCE = 500;

const leftOutSchema = z.array(z.number().int());

const measured = z.number().optional();
const daysSchema = z.array(
  z.object({
    day: z.string().refine(isDay),
    tminC: measured,
    tmaxC: measured,
    rainMm: measured,
    newSnowMm: measured,
    snowDepthMm: measured,
  }),
);

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

/** The version of the facts a garden's record came with; nothing where it has none. */
export async function recordVersion(db: Database, gardenId: string): Promise<number | undefined> {
  const row = await db
    .selectFrom('records')
    .select('facts_version')
    .where('garden_id', '=', gardenId)
    .executeTakeFirst();
  return row?.facts_version;
}

/** The record that stood before the present one, if there was one. */
export async function formerRecord(db: Database, gardenId: string): Promise<WeatherRecord | undefined> {
  const row = await db.selectFrom('former_records').selectAll().where('garden_id', '=', gardenId).executeTakeFirst();
  if (row === undefined) return undefined;
  const about = `former weather record of ${gardenId}`;
  return {
    origin: row.origin,
    leftOut: parseJson(leftOutSchema, row.left_out, about),
    days: parseJson(daysSchema, row.days, about).map((day) => withoutAbsent(day)),
  };
}

async function keepFormer(db: Database, gardenId: string, held: WeatherRecord | undefined): Promise<void> {
  if (held === undefined) return;
  const row = { origin: held.origin, left_out: JSON.stringify(held.leftOut), days: JSON.stringify(held.days) };
  await db
    .insertInto('former_records')
    .values({ garden_id: gardenId, ...row })
    .onConflict((conflict) => conflict.column('garden_id').doUpdateSet(row))
    .execute();
}

/**
 * Puts a long record in place of the one there was, which is kept as the former one. The very same record changes nothing.
 *
 * @returns the facts version by then
 */
export function replaceWeatherRecord(db: Database, gardenId: string, record: WeatherRecord): Promise<number> {
  return writing(db, async (transaction) => {
    const held = await weatherRecord(transaction, gardenId);
    if (held !== undefined && isSameRecord(held, record)) return factsVersion(transaction, gardenId);
    await keepFormer(transaction, gardenId, held);
    const version = await raiseFactsVersion(transaction, gardenId);
    await transaction.deleteFrom('record_weather').where('garden_id', '=', gardenId).execute();
    await transaction.deleteFrom('records').where('garden_id', '=', gardenId).execute();
    await transaction
      .insertInto('records')
      .values({
        garden_id: gardenId,
        origin: record.origin,
        left_out: JSON.stringify(record.leftOut),
        facts_version: version,
      })
      .execute();
    const rows = record.days.map((day) => rowOf(gardenId, day));
    for (const batch of batches(rows)) await transaction.insertInto('record_weather').values(batch).execute();
    return version;
  });
}

/** Whether two records say the same of the same days. */
export function isSameRecord(a: WeatherRecord, b: WeatherRecord): boolean {
  const [one, other] = [a, b].map(({ origin, leftOut, days }) => {
    const rows = [...days].sort((x, y) => (x.day < y.day ? -1 : 1)).map((day) => Object.values(rowOf('', day)));
    return JSON.stringify([origin, leftOut, rows]);
  });
  return one === other;
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
