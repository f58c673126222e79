/**
 * The record as data: seasons with what they add up to, and every line. What a file of it holds, version by version.
 */
import { z } from 'zod';
import { isDay } from '../../measures/days.ts';
import { recordRow } from './row.ts';

const day = z.string().refine(isDay, 'a real date as YYYY-MM-DD');
const text = z.string();
const count = z.number().int().nonnegative();
const amount = z.number().nonnegative();

/** A crop that stood in a bed in the season. */
const cropGrown = z.strictObject({
  itemId: text,
  what: text,
  areaM2: amount.optional(),
  how: z.enum(['sown', 'planted', 'set-out']),
  from: day,
  /** The last harvest that was told; absent where none was. */
  lastHarvest: day.optional(),
});

/** A cover that stood in a bed in the season. */
const coverGrown = z.strictObject({
  itemId: text,
  what: text,
  sown: day,
  cut: day.optional(),
  dead: day.optional(),
});

/** A bed's season. */
const bedSeason = z.strictObject({
  id: text,
  name: text,
  /** It is in the garden file no longer. */
  gone: z.literal(true).optional(),
  crops: z.array(cropGrown),
  covers: z.array(coverGrown),
  compostL: amount,
  fedG: amount,
});

/** A pile that was at work in the season, over its whole life. */
const pileSeason = z.strictObject({
  id: text,
  name: text,
  gone: z.literal(true).optional(),
  method: z.enum(['hot', 'cold']).optional(),
  built: day.optional(),
  ingredients: z.array(z.strictObject({ what: text, litres: amount })),
  /** Readings with a thermometer: how many, the first, the highest, and on how many days it was hot. */
  temperatures: z
    .strictObject({
      readings: count,
      first: z.strictObject({ on: day, tempC: z.number() }),
      highest: z.strictObject({ on: day, tempC: z.number() }),
      hotDays: count,
      hotFromC: z.number(),
    })
    .optional(),
  turns: count,
  curingSince: day.optional(),
  ready: day.optional(),
  /** Where its compost went, alone or mixed with that of other piles. */
  went: z.array(
    z.strictObject({ on: day, bed: text, bedName: text, litres: amount, mixed: z.literal(true).optional() }),
  ),
});

const low = z.strictObject({ on: day, tempC: z.number() });

/** What was logged of the season's own weather. */
const weatherSeen = z.strictObject({
  days: count,
  first: day,
  last: day,
  lowest: low.optional(),
  highest: low.optional(),
  rainMm: amount.optional(),
  newSnowMm: amount.optional(),
  wateringMm: amount.optional(),
});

/** Freezes seen: nights of the log and lows measured at or below freezing. */
const freezesSeen = z.strictObject({ nights: count, lastSpring: low.optional(), firstAutumn: low.optional() });

const minutes = z.strictObject({ of: text, minutes: amount });

/** Work done, by what each task is reckoned to take. */
const workDone = z.strictObject({
  minutes: amount,
  byPractice: z.array(minutes),
  /** By calendar month, "2027-04". */
  byMonth: z.array(minutes),
  /** By member of the household who told it, or whom it was given to; work nobody's name stands at is left out. */
  byMember: z.array(minutes),
});

/** A season with what it adds up to. */
const seasonSummary = z.strictObject({
  season: z.number().int(),
  name: text,
  from: day,
  to: day,
  /** It is not over yet. */
  running: z.literal(true).optional(),
  beds: z.array(bedSeason),
  piles: z.array(pileSeason),
  weather: weatherSeen.optional(),
  freezes: freezesSeen.optional(),
  work: workDone,
});

/** A season with what it adds up to. */
export type SeasonSummary = z.infer<typeof seasonSummary>;
export type BedSeason = z.infer<typeof bedSeason>;
export type PileSeason = z.infer<typeof pileSeason>;
export type WorkDone = z.infer<typeof workDone>;

/** What a file calls itself, and the version of its shape: raised when a key goes or means something else. */
export const RECORD_FORMAT = 'loamtide-season-record';
export const RECORD_VERSION = 1;

/** The record of a garden as a file. */
export const recordFile = z.strictObject({
  format: z.literal(RECORD_FORMAT),
  version: z.literal(RECORD_VERSION),
  garden: z.strictObject({ id: text, name: text, timeZone: text }),
  /** The garden's own day on which it was made. */
  madeOn: day,
  seasons: z.array(seasonSummary),
  rows: z.array(recordRow),
});

/** The record of a garden as a file. */
export type RecordFile = z.infer<typeof recordFile>;
