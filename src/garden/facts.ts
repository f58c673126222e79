/**
 * The facts a ledger may hold. Each is parsed once on its way in and trusted afterwards.
 */
import { z } from 'zod';
import { clock } from './file-values.ts';
import { gardenFileSchema, SOIL_TEXTURES } from './garden-file.ts';
import { householdFacts } from './household-facts.ts';
import { realDay as day, loggedDay } from './logged-day.ts';
import { MATURITY_FAILURES } from './pile-file.ts';
import { COVERED, MULCHES, REGROWTH_ANSWERS, REGROWTH_WORK, STAGES } from './stand-file.ts';
import { gardenMended } from './stored-edit.ts';

const subject = z.discriminatedUnion('type', [
  z.object({ type: z.literal('bed'), id: z.string(), name: z.string() }),
  z.object({
    type: z.enum(['stand', 'planting']),
    id: z.string(),
    name: z.string(),
    bedId: z.string(),
    grows: z.string().optional(),
    bedName: z.string().optional(),
  }),
  z.object({ type: z.literal('pile'), id: z.string(), name: z.string(), binId: z.string() }),
  z.object({ type: z.literal('garden'), id: z.string(), name: z.string() }),
]);

const effect = z.discriminatedUnion('makes', [
  z.object({ makes: z.literal('stand-sown'), standId: z.string(), bedId: z.string(), coverId: z.string() }),
  z.object({ makes: z.literal('stand-resown'), standId: z.string(), coverId: z.string() }),
  z.object({
    makes: z.literal('seed-sown'),
    standId: z.string(),
    coverId: z.string(),
    grams: z.number().nonnegative(),
  }),
  z.object({ makes: z.literal('seed-bought'), coverId: z.string(), grams: z.number().nonnegative() }),
  z.object({ makes: z.literal('stand-cut'), standId: z.string() }),
  z.object({ makes: z.literal('regrowth-checked'), standId: z.string() }),
  z.object({ makes: z.literal('regrowth-worked'), standId: z.string(), what: z.enum(REGROWTH_WORK) }),
  z.object({ makes: z.literal('stand-dead'), standId: z.string() }),
  z.object({ makes: z.literal('bed-cleared'), plantingId: z.string() }),
  z.object({ makes: z.literal('bed-filled'), bedId: z.string() }),
  z.object({ makes: z.literal('pile-built'), pileId: z.string(), litres: z.number().nonnegative().optional() }),
  z.object({ makes: z.literal('pile-turned'), pileId: z.string() }),
  z.object({ makes: z.literal('pile-curing'), pileId: z.string() }),
  z.object({ makes: z.literal('pile-finished'), pileId: z.string(), litres: z.number().nonnegative().optional() }),
  z.object({
    makes: z.literal('bed-topdressed'),
    bedId: z.string(),
    litres: z.number().nonnegative(),
    pileIds: z.array(z.string()).min(1).optional(),
  }),
  z.object({
    makes: z.literal('bed-fed'),
    bedId: z.string(),
    fertiliserId: z.string(),
    grams: z.number().nonnegative(),
    plantingId: z.string().optional(),
  }),
  z.object({ makes: z.literal('compost-bought'), litres: z.number().nonnegative() }),
  z.object({ makes: z.literal('compost-tested'), boughtOn: day }),
  z.object({ makes: z.literal('planting-started'), plantingId: z.string() }),
  z.object({ makes: z.literal('planting-raised'), plantingId: z.string() }),
  z.object({ makes: z.literal('soil-sampled'), bedId: z.string().optional() }),
  z.object({
    makes: z.literal('soil-squeezed'),
    soilTexture: z.enum(SOIL_TEXTURES),
    answer: z.enum(['crumbles', 'smears']),
  }),
]);

/** A garden file brought in. `prefer` says who wins where a reported fact stands against it. */
const gardenImported = z.object({
  kind: z.literal('garden-imported'),
  file: gardenFileSchema,
  prefer: z.enum(['reported', 'file']),
});

/** Why a task stood on its day: a rule, what it saw, the limit it held that against, and where its figure comes from. */
const reason = z.object({
  rule: z.string(),
  saw: z.record(z.string(), z.union([z.number(), z.string()])),
  limit: z.union([z.number(), z.string()]).optional(),
  source: z.string(),
});

/** A task as it stood when it was done, and what doing it makes true. */
const doneTask = z.object({
  key: z.string(),
  practice: z.string(),
  taskKind: z.string(),
  title: z.string(),
  job: z.object({ id: z.string(), title: z.string() }),
  subject,
  effortMinutes: z.number(),
  /** The part of it that is spent once: absent where there is none, and in entries from before it was kept. */
  onceMinutes: z.number().optional(),
  makes: z.array(effect),
  /** The day it was planned on, as the plan stood on the day it was done, and the last day that would have done. */
  plannedFor: day.optional(),
  lastDay: day.optional(),
  /** Why it was planned then, as the plan had it when it was marked: absent in entries from before it was kept. */
  because: z.array(reason).optional(),
});

/** Tasks done on a day and marked together: one act, taken back as one. */
const tasksDone = z.object({ kind: z.literal('tasks-done'), on: day, tasks: z.array(doneTask).min(1) });

const tasksSkipped = z.object({
  kind: z.literal('tasks-skipped'),
  on: day,
  tasks: z
    .array(
      z.object({
        key: z.string(),
        title: z.string(),
        /** What it was about and whose practice: absent in entries from before it was kept. */
        subject: subject.optional(),
        practice: z.string().optional(),
        plannedFor: day.optional(),
        /** Why it was planned then: absent in entries from before it was kept. */
        because: z.array(reason).optional(),
      }),
    )
    .min(1),
});

/** Tasks that are not to be done up to a day, that day included: what "not yet" says. */
const putOff = z.object({
  kind: z.literal('put-off'),
  on: day,
  tasks: z.array(z.object({ key: z.string(), title: z.string() })).min(1),
});
const dayPinned = z.object({ kind: z.literal('day-pinned'), key: z.string(), title: z.string(), day });
const dayUnpinned = z.object({ kind: z.literal('day-unpinned'), key: z.string(), title: z.string() });

const pileRead = z.object({
  kind: z.literal('pile-read'),
  pileId: z.string(),
  on: day,
  at: clock.optional(),
  tempC: z.number().optional(),
  moisture: z.enum(['dry', 'damp', 'wet']).optional(),
  smell: z.enum(['earthy', 'ammonia', 'sour']).optional(),
  pests: z.literal(true).optional(),
  slumped: z.literal(true).optional(),
});

/** What a look whether compost is ready may find amiss: it heats again, smells in the bag, or can still be told apart. */
const notReady = z.object({
  kind: z.literal('compost-not-ready'),
  pileId: z.string(),
  on: day,
  failed: z.array(z.enum(MATURITY_FAILURES)).min(1),
});

/** How cold the night after an evening is expected to be, or was. */
const coldNightTold = z.object({
  kind: z.literal('cold-night-told'),
  evening: day,
  lowC: z.number().min(-60).max(40),
  how: z.enum(['expected', 'measured']),
});

/** Days with nobody there to work. */
const awayTold = z.object({ kind: z.literal('away-told'), from: day, to: day });

const soilSqueezed = z.object({
  kind: z.literal('soil-squeezed'),
  on: day,
  soilTexture: z.enum(SOIL_TEXTURES),
  answer: z.enum(['crumbles', 'smears']),
});

const diseaseFound = z.object({
  kind: z.literal('disease-found'),
  bedId: z.string(),
  cropId: z.string(),
  disease: z.string().trim().min(1).max(200),
  on: day,
});

/** Days of the garden's own weather, seen or expected. */
const weatherLogged = z.object({
  kind: z.literal('weather-logged'),
  days: z.array(loggedDay).min(1),
});

/** A stage of flowering seen in a stand, with the day the figures had for it. */
const stageSeen = z.object({
  kind: z.literal('stage-seen'),
  standId: z.string(),
  coverId: z.string(),
  on: day,
  stage: z.enum(STAGES),
  modelled: day.optional(),
});

/** What a look at a young stand found, with the task that asked for it, which it settles. */
const standLooked = z.object({
  kind: z.literal('stand-looked'),
  standId: z.string(),
  on: day,
  covered: z.enum(COVERED),
  weedy: z.boolean(),
  task: doneTask.optional(),
});

/** A cut stand that was seen to have grown again, and what the gardener means to do; with the look it settles. */
const regrowthSeen = z.object({
  kind: z.literal('regrowth-seen'),
  standId: z.string(),
  bedId: z.string(),
  coverId: z.string(),
  on: day,
  answer: z.enum(REGROWTH_ANSWERS),
  task: doneTask.optional(),
});

/**
 * A cover chosen for a bed: a stand that is meant to be sown. `instead` names planned stands it takes the place of, and
 * any mulch planned for the same days goes with them.
 */
const standPlanned = z.object({
  kind: z.literal('stand-planned'),
  standId: z.string(),
  bedId: z.string(),
  coverId: z.string(),
  sowOn: day,
  instead: z.array(z.string()).optional(),
});

/** A planned stand that is not to be sown after all. */
const standDropped = z.object({
  kind: z.literal('stand-dropped'),
  standId: z.string(),
  bedId: z.string(),
  coverId: z.string(),
});

/** Mulch chosen for a span of a bed, with no cover there. */
const mulchPlanned = z.object({
  kind: z.literal('mulch-planned'),
  bedId: z.string(),
  from: day,
  to: day.optional(),
  mulch: z.enum(MULCHES),
  instead: z.array(z.string()).optional(),
});

/**
 * A plan of crops taken in: plantings that are meant, and plantings that were meant and are not any more. One that has the id
 * of one dropped takes its place. Planned covers that the crops leave no time for go with it.
 */
const plantingsPlanned = z.object({
  kind: z.literal('plantings-planned'),
  plantings: z.array(
    z.object({
      id: z.string(),
      bedId: z.string(),
      cropId: z.string(),
      start: z.object({ how: z.enum(['sow', 'set-out']), day }),
      lastHarvest: day.optional(),
      areaM2: z.number().positive().optional(),
    }),
  ),
  dropped: z.array(z.object({ id: z.string(), bedId: z.string(), cropId: z.string() })),
  coversDropped: z.array(z.object({ standId: z.string(), bedId: z.string(), coverId: z.string() })).optional(),
});

/** A crop wanted for a season or for every one, in place of what was wanted of it for the same. */
const cropWished = z.object({
  kind: z.literal('crop-wished'),
  cropId: z.string(),
  amount: z.union([
    z.strictObject({ beds: z.number().int().positive() }),
    z.strictObject({ areaM2: z.number().positive() }),
  ]),
  season: z.number().int().optional(),
});

/** A crop that is not wanted any more for a season, or for every one. */
const wishDropped = z.object({
  kind: z.literal('wish-dropped'),
  cropId: z.string(),
  season: z.number().int().optional(),
});

/** An earlier entry taken back. */
const entryUndone = z.object({ kind: z.literal('entry-undone'), entry: z.number().int().positive() });

/** What a fact must look like to be taken in, or read back from where it was kept. */
export const factSchema = z.discriminatedUnion('kind', [
  gardenImported,
  tasksDone,
  tasksSkipped,
  putOff,
  dayPinned,
  dayUnpinned,
  pileRead,
  notReady,
  coldNightTold,
  awayTold,
  soilSqueezed,
  diseaseFound,
  weatherLogged,
  stageSeen,
  standLooked,
  regrowthSeen,
  standPlanned,
  standDropped,
  mulchPlanned,
  plantingsPlanned,
  cropWished,
  wishDropped,
  gardenMended,
  entryUndone,
  ...householdFacts,
]);

/** One fact of the ledger. */
export type Fact = z.infer<typeof factSchema>;

/** A task done, as a fact tells it. */
export type DoneTask = z.infer<typeof doneTask>;

/** A task skipped, as a fact tells it. */
export type SkippedTask = Extract<Fact, { kind: 'tasks-skipped' }>['tasks'][number];

/** A day of weather, as a fact tells it. */
export type WeatherTold = Extract<Fact, { kind: 'weather-logged' }>['days'][number];
