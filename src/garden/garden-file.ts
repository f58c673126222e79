/**
 * The garden file: what a gardener writes down about a garden, as YAML or JSON.
 *
 * The schema here is its contract. Every field's error text is the mend shown beside the value that was refused.
 */
import { IANAZone } from 'luxon';
import { z } from 'zod';
import {
  across,
  choice,
  day,
  id,
  justOne,
  known,
  list,
  litres,
  monthDay,
  notBefore,
  number,
  planned,
  text,
} from './file-values.ts';
import { householdSchema } from './household-file.ts';
import { bin, compostBought, pile } from './pile-file.ts';
import { mulch, seedGrams, stand } from './stand-file.ts';
import { WEEKDAY_NAMES } from './weekday-names.ts';

/** Soil textures a garden may name, coarse to fine. */
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

/** What a household may hold to keep frost off, thinnest first. */
const FROST_COVERS = ['light-fabric', 'heavy-fabric', 'fabric-and-film'] as const;

/** The chance of flowers that cuts are planned by where the file names none, percent. House default: one year of ten. */
const BLOOM_RISK_PERCENT = 10;

const place = known('the garden', {
  id: id.optional(),
  name: text('Give the garden a name, such as "Hollow Lane".'),
  latitude: number('degrees north (negative in the south)', 44.5, -90, 90),
  longitude: number('degrees east (negative in the west)', -88.1, -180, 180),
  elevationM: number('metres above the sea', 210, -430, 6000).optional(),
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
  hoursPerWeek: number('hours a week', 4, 0.5, 80).default(4),
  soilTexture: choice(SOIL_TEXTURES).default('loam'),
  frostRisk: z
    .union([z.literal(10), z.literal(30), z.literal(50)], { error: 'Give 10, 30 or 50 (percent odds to plan by).' })
    .default(30),
  bloomRiskPercent: number('percent odds that a cover has flowered when it is cut', 5, 1, 50).default(
    BLOOM_RISK_PERCENT,
  ),
  frostOffsetDays: number('days (negative by a warm wall)', 5, -40, 40).default(0),
  tempOffsetC: number('degrees C (negative in a cold pocket)', -1, -8, 8).default(0),
});

const CLIMATE_KEYS = ['dailyRecord', 'station', 'nearest', 'monthlyNormals', 'frostDates'] as const;

const climate = known('one climate', {
  dailyRecord: text('Give the name of a CSV file, such as weather.csv.').optional(),
  station: text('Give a station id, such as USW00014839.').optional(),
  nearest: z.literal(true, { error: 'Write nearest: true.' }).optional(),
  monthlyNormals: z
    .array(
      known('a month', {
        highC: number('degrees C', -2.1, -60, 60),
        lowC: number('degrees C', -10.4, -70, 50),
        precipMm: number('millimetres', 47, 0, 3000),
      }),
      { error: 'Give twelve months, January first.' },
    )
    .length(12, 'Give twelve months, January first.')
    .optional(),
  frostDates: known('frost dates', { lastSpring: monthDay, firstAutumn: monthDay }).optional(),
}).refine((given) => justOne(given, CLIMATE_KEYS), across(`Give exactly one of ${CLIMATE_KEYS.join(', ')}.`));

const bed = known('a bed', {
  id: id.optional(),
  name: text('Give the bed a name, such as "North bed".'),
  lengthM: number('metres', 2.4, 0.2, 200),
  widthM: number('metres', 1.2, 0.2, 50),
  depthM: number('metres of soil', 0.3, 0.05, 3).optional(),
  raised: z.boolean({ error: 'Give true or false.' }).default(true),
  watered: z.boolean({ error: 'Give true or false.' }).default(false),
  soilTexture: choice(SOIL_TEXTURES).optional(),
  topdressingMm: number('millimetres of compost a year', 25, 1, 150).optional(),
  plannedFor: day.optional(),
  filledOn: day.optional(),
  pathsM2: number('square metres of path beside it', 2, 0, 1000).optional(),
})
  .refine(
    (given) => given.plannedFor === undefined || given.depthM !== undefined,
    across('Give a depth in metres, such as depthM: 0.3: a bed still to be filled is reckoned by it.', 'depthM'),
  )
  .refine(
    (given) => given.plannedFor !== undefined || given.filledOn === undefined,
    across('Give plannedFor beside it, the day it was meant to be there, or leave it out.', 'filledOn'),
  )
  .refine(
    (given) => given.plannedFor !== undefined || given.pathsM2 === undefined,
    across('Give plannedFor beside it, the day the bed is to be there, or leave it out.', 'pathsM2'),
  );

const WHOLE_DAYS = 'Give whole days between two sowings, such as 14.';
const WHOLE_TIMES = 'Give whole times, such as 3.';

const planting = known('a planting', {
  id: id.optional(),
  bed: text('Give the id or name of a bed above.'),
  crop: text('Give a crop id, such as carrot.'),
  sow: day.optional(),
  setOut: day.optional(),
  meant: day.optional(),
  indoors: day.optional(),
  lastHarvest: day.optional(),
  areaM2: number('square metres of the bed', 1.4, 0.01, 10_000).optional(),
  again: known('a succession', {
    everyDays: number('days between two sowings, in whole days', 14, 1, 180).int(WHOLE_DAYS),
    times: number('times it is sown again after the first', 3, 1, 26).int(WHOLE_TIMES),
  }).optional(),
  planned: planned(['sow', 'setOut', 'lastHarvest']),
})
  .refine((given) => justOne(given, ['sow', 'setOut']), across('Give either sow or setOut, such as sow: "2027-05-20".'))
  .refine(
    (given) => notBefore(given.lastHarvest, given.sow ?? given.setOut),
    across('Give a lastHarvest that is not before the sowing or setting out.', 'lastHarvest'),
  );

const gear = known('a frost cover', {
  what: choice(FROST_COVERS),
  areaM2: number('square metres', 12, 0.1, 10_000),
});

const seed = known('a packet of seed', {
  crop: text('Give a crop id, such as carrot.').optional(),
  cover: text('Give a cover crop id, such as oats.').optional(),
  packed: number('the year it was packed for', 2026, 1900, 2200).int('Give a whole year, such as 2026.'),
  grams: seedGrams.optional(),
  on: day.optional(),
})
  .refine((given) => justOne(given, ['crop', 'cover']), across('Give either crop or cover, such as crop: carrot.'))
  .refine(
    ({ grams, on }) => (grams === undefined) === (on === undefined),
    across('Give grams and on together: what it held, and the day it held so much.', 'grams'),
  );

const wish = known('a wish', {
  crop: text('Give a crop id, such as tomato.'),
  beds: number('whole beds', 1, 1, 200).int('Give whole beds, such as 1.').optional(),
  areaM2: number('square metres', 3, 0.1, 10_000).optional(),
  year: number('the year it is wanted in', 2028, 1900, 2200).int('Give a whole year, such as 2028.').optional(),
}).refine((given) => justOne(given, ['beds', 'areaM2']), across('Give either beds or areaM2, such as areaM2: 3.'));

const soilTest = known('a soil test', {
  on: day,
  bed: text('Give the id or name of a bed above.').optional(),
  organicMatterPercent: number('percent organic matter', 4.5, 0, 100).optional(),
  phosphorusPpm: number('parts per million of phosphorus', 18, 0, 5000).optional(),
  ph: number('pH', 6.5, 2, 11).optional(),
});

const soilSqueeze = known('a squeeze test', {
  on: day,
  soilTexture: choice(SOIL_TEXTURES),
  answer: choice(['crumbles', 'smears']),
});

const disease = known('a disease found', {
  bed: text('Give the id or name of a bed above.'),
  crop: text('Give a crop id, such as tomato.'),
  disease: text('Give its name, such as clubroot.'),
  found: day,
});

const coldNight = known('a cold night', {
  evening: day,
  lowC: number('degrees C', -2, -60, 40),
  how: choice(['expected', 'measured']),
});

const fed = known('a fertiliser strewn', {
  bed: text('Give the id or name of a bed above.'),
  on: day,
  fertiliser: text('Give a fertiliser id, such as blood_meal.'),
  grams: number('grams strewn', 250, 1, 100_000),
  planting: text('Give the id of a planting above, or leave it out where it was for the whole bed.').optional(),
});

/** The garden file. Fields left out are filled with the defaults named in docs/garden-file.md. */
export const gardenFileSchema = known('a garden file', {
  garden: place,
  climate,
  beds: z.array(bed, { error: 'Give a list of beds.' }).min(1, 'Give at least one bed.'),
  plantings: list(planting, 'plantings'),
  coverStands: list(stand, 'cover stands'),
  mulches: list(mulch, 'mulches planned'),
  bins: list(bin, 'bins'),
  piles: list(pile, 'piles'),
  topdressing: known('topdressing', {
    depthMm: number('millimetres of compost', 13, 1, 150),
    season: choice(['spring', 'autumn']),
  }).optional(),
  topdressed: list(
    known('a topdressing given', {
      bed: text('Give the id or name of a bed above.'),
      on: day,
      litres: litres(60),
      piles: z
        .array(text('Give the id of a pile above.'), { error: 'Give piles as a list of ids, such as [left-bay-2027].' })
        .min(1, 'Give at least one pile, or leave the list out.')
        .optional(),
      material: text('Give a material such as horse_manure_bedded, or leave it out for compost.').optional(),
    }).refine(
      ({ piles, material }) => piles === undefined || material === undefined,
      across('Give the piles that compost came from, or a raw material, but not both.', 'material'),
    ),
    'topdressings given',
  ),
  fed: list(fed, 'fertilisers strewn'),
  compostBought: list(compostBought, 'deliveries'),
  away: list(
    known('a time away', { from: day, to: day }).refine(
      (given) => notBefore(given.to, given.from),
      across('Give a "to" that is not before "from".', 'to'),
    ),
    'times away',
  ),
  household: householdSchema.optional(),
  gear: list(gear, 'frost covers'),
  seeds: list(seed, 'packets of seed'),
  wishes: list(wish, 'wishes'),
  soilTests: list(soilTest, 'soil tests'),
  soilSqueezes: list(soilSqueeze, 'squeeze tests'),
  diseases: list(disease, 'diseases found'),
  coldNights: list(coldNight, 'cold nights'),
});

/** A garden file as parsed, with its defaults filled in. */
export type GardenFile = z.infer<typeof gardenFileSchema>;
