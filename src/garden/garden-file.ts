/**
 * The garden file: what a gardener writes down about a garden, as YAML or JSON.
 *
 * The schema here is its contract. Every field's error text is the mend shown beside the value that was refused.
 */
import { IANAZone } from 'luxon';
import { z } from 'zod';
import { isDay, isMonthDay } from '../measures/days.ts';
import { suggestion } from './nearest-name.ts';

const text = (mend: string) => z.string({ error: mend }).trim().min(1, mend).max(200, 'Shorten it to 200 characters.');
const id = z
  .string({ error: 'Give a short id such as north-bed, or leave it out.' })
  .regex(/^[a-z0-9][a-z0-9_.-]{0,79}$/, 'Use small letters, digits and hyphens, such as north-bed.');
const day = z
  .string({ error: 'Give a date in quotes as YYYY-MM-DD, such as "2027-04-18".' })
  .refine(isDay, 'Give a real date as YYYY-MM-DD, such as "2027-04-18".');
const monthDay = z
  .string({ error: 'Give month and day in quotes, such as "05-10".' })
  .refine(isMonthDay, 'Give a real month and day as MM-DD, such as "05-10".');
const number = (mend: string, least: number, most: number) =>
  z.number({ error: mend }).min(least, mend).max(most, mend);
const litres = (example: number) => number(`Give litres, such as ${example}.`, 0, 100_000);
const choice = <const T extends readonly [string, ...string[]]>(options: T) =>
  z.enum(options, { error: `Give one of ${options.join(', ')}.` });

/** An object that refuses keys it does not know and names the nearest it does. */
function known<Shape extends z.core.$ZodLooseShape>(what: string, shape: Shape) {
  const keys = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? issue.keys.map((key: string) => suggestion(key, keys)).join(' ')
        : `Give ${what} with ${keys.join(', ')}.`,
  });
}

const list = <Item extends z.ZodType>(item: Item, what: string) =>
  z.array(item, { error: `Give a list of ${what}, each starting with a hyphen.` }).default([]);

export const SOIL_TEXTURES = [
  'sand',
  'loamy_sand',
  'sandy_loam',
  'loam',
  'silt_loam',
  'silt',
  'silt_clay_loam',
  'silty_clay',
  'clay',
] as const;

export const WEEKDAY_NAMES = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

const place = known('the garden', {
  id: id.optional(),
  name: text('Give the garden a name, such as "Hollow Lane".'),
  latitude: number('Give degrees north, such as 44.5 (south is negative).', -90, 90),
  longitude: number('Give degrees east, such as -88.1 (west is negative).', -180, 180),
  elevationM: number('Give metres above the sea, such as 210.', -430, 6000).optional(),
  timeZone: z
    .string({ error: 'Give an IANA time zone such as America/Chicago.' })
    .refine((zone) => IANAZone.isValidZone(zone), 'Give an IANA time zone such as America/Chicago.'),
  hardinessZone: z
    .string({ error: 'Give a half zone in quotes, such as "5b".' })
    .regex(/^(1[0-3]|[1-9])[ab]$/, 'Give a half zone such as "5b".')
    .optional(),
  units: choice(['us', 'metric']).default('metric'),
  workDays: z
    .array(choice(WEEKDAY_NAMES), { error: 'Give days as a list, such as [wed, sat].' })
    .min(1, 'Give at least one day, such as [sat].')
    .default(['sat', 'sun']),
  hoursPerWeek: number('Give hours a week, such as 4.', 0.5, 80).default(4),
  soilTexture: choice(SOIL_TEXTURES).default('loam'),
  frostRisk: z
    .union([z.literal(10), z.literal(30), z.literal(50)], { error: 'Give 10, 30 or 50 (percent odds to plan by).' })
    .default(30),
  frostOffsetDays: number('Give days, such as 5 for a cold pocket or -5 for a warm wall.', -40, 40).default(0),
  tempOffsetC: number('Give degrees C, such as -1 for a cold pocket.', -8, 8).default(0),
});

const climate = known('one climate', {
  dailyRecord: text('Give the name of a CSV file, such as weather.csv.').optional(),
  station: text('Give a station id, such as USW00014839.').optional(),
  nearest: z.literal(true, { error: 'Write nearest: true.' }).optional(),
  monthlyNormals: z
    .array(
      known('a month', {
        highC: number('Give degrees C, such as -2.1.', -60, 60),
        lowC: number('Give degrees C, such as -10.4.', -70, 50),
        precipMm: number('Give millimetres, such as 47.', 0, 3000),
      }),
      { error: 'Give twelve months, January first.' },
    )
    .length(12, 'Give twelve months, January first.')
    .optional(),
  frostDates: known('frost dates', { lastSpring: monthDay, firstAutumn: monthDay }).optional(),
}).refine((given) => Object.values(given).filter((value) => value !== undefined).length === 1, {
  error: 'Give exactly one of dailyRecord, station, nearest, monthlyNormals, frostDates.',
});

const bed = known('a bed', {
  id: id.optional(),
  name: text('Give the bed a name, such as "North bed".'),
  lengthM: number('Give metres, such as 2.4.', 0.2, 200),
  widthM: number('Give metres, such as 1.2.', 0.2, 50),
  depthM: number('Give metres of soil depth, such as 0.3.', 0.05, 3).optional(),
  raised: z.boolean({ error: 'Give true or false.' }).default(true),
  watered: z.boolean({ error: 'Give true or false.' }).default(false),
  soilTexture: choice(SOIL_TEXTURES).optional(),
});

const planting = known('a planting', {
  id: id.optional(),
  bed: text('Give the id or name of a bed above.'),
  crop: text('Give a crop id, such as carrot.'),
  sow: day.optional(),
  setOut: day.optional(),
  lastHarvest: day.optional(),
})
  .refine((given) => (given.sow === undefined) !== (given.setOut === undefined), {
    error: 'Give either sow or setOut, such as sow: "2027-05-20".',
  })
  .refine((given) => (given.lastHarvest ?? '9999') >= (given.sow ?? given.setOut ?? ''), {
    error: 'Give a lastHarvest that is not before the sowing or setting out.',
    path: ['lastHarvest'],
  });

const stand = known('a cover stand', {
  id: id.optional(),
  bed: text('Give the id or name of a bed above.'),
  cover: text('Give a cover crop id, such as oats.').optional(),
  mix: text('Give a mix id, such as rye-vetch.').optional(),
  sow: day,
  cut: day.optional(),
  regrowthChecked: list(day, 'dates'),
  dead: day.optional(),
}).refine((given) => (given.cover === undefined) !== (given.mix === undefined), {
  error: 'Give either cover or mix, such as cover: oats.',
});

const pile = known('a pile', {
  id: id.optional(),
  bin: text('Give the id or name of a bin above.'),
  built: day,
  method: choice(['hot', 'cold']),
  ingredients: list(
    known('an ingredient', { material: text('Give a material id, such as leaves_dry_loose.'), litres: litres(200) }),
    'ingredients',
  ),
  readings: list(
    known('a reading', {
      on: day,
      tempC: number('Give degrees C, such as 55.', -30, 95).optional(),
      moisture: choice(['dry', 'damp', 'wet']).optional(),
      smell: choice(['earthy', 'ammonia', 'sour']).optional(),
    }),
    'readings',
  ),
  turns: list(day, 'dates'),
  curingSince: day.optional(),
  finished: day.optional(),
  finishedLitres: litres(300).optional(),
});

const bin = known('a bin', {
  id: id.optional(),
  name: text('Give the bin a name, such as "Left bay".'),
  volumeL: litres(760),
});

/** The garden file. Fields left out are filled with the defaults named in docs/garden-file.md. */
export const gardenFileSchema = known('a garden file', {
  garden: place,
  climate,
  beds: z.array(bed, { error: 'Give a list of beds.' }).min(1, 'Give at least one bed.'),
  plantings: list(planting, 'plantings'),
  coverStands: list(stand, 'cover stands'),
  bins: list(bin, 'bins'),
  piles: list(pile, 'piles'),
  topdressing: known('topdressing', {
    depthMm: number('Give millimetres of compost, such as 13.', 1, 150),
    season: choice(['spring', 'autumn']),
  }).optional(),
  topdressed: list(
    known('a topdressing given', { bed: text('Give the id or name of a bed above.'), on: day, litres: litres(60) }),
    'topdressings given',
  ),
  compostBought: list(known('compost bought', { on: day, litres: litres(500) }), 'deliveries'),
  away: list(
    known('a time away', { from: day, to: day }).refine((given) => given.from <= given.to, {
      error: 'Give a "to" that is not before "from".',
      path: ['to'],
    }),
    'times away',
  ),
});

/** A garden file as parsed, with its defaults filled in. */
export type GardenFile = z.infer<typeof gardenFileSchema>;
