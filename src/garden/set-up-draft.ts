/**
 * A garden being set up: what the gardener has told so far, step by step, before there is a garden file of it.
 *
 * It is looser than a garden file: any step may be missing. What grew in seasons past is kept by crop and season alone, for
 * nobody remembers the days.
 */
import { z } from 'zod';
import { day, monthDay } from './file-values.ts';
import { SOIL_TEXTURES } from './garden-file.ts';
import { WEEKDAY_NAMES } from './weekday-names.ts';

/** The steps, in the order they are gone through. */
export const SET_UP_STEPS = [
  'where',
  'climate',
  'garden',
  'beds',
  'bins',
  'last-year',
  'growing',
  'look-over',
] as const;

/** One step of setting a garden up. */
export type SetUpStep = (typeof SET_UP_STEPS)[number];

const place = z.strictObject({
  latitude: z.number().min(-90).max(90),
  longitude: z.number().min(-180).max(180),
  elevationM: z.number().optional(),
  /** The station it was found by, as it is called. */
  foundBy: z.string().optional(),
});

const climate = z.union([
  z.strictObject({ station: z.string() }),
  z.strictObject({ nearest: z.literal(true) }),
  z.strictObject({ frostDates: z.strictObject({ lastSpring: monthDay, firstAutumn: monthDay }) }),
]);

const about = z.strictObject({
  name: z.string(),
  timeZone: z.string(),
  units: z.enum(['us', 'metric']),
  workDays: z.array(z.enum(WEEKDAY_NAMES)),
  hoursPerWeek: z.number(),
  soilTexture: z.enum(SOIL_TEXTURES),
});

const bed = z.strictObject({
  id: z.string(),
  name: z.string(),
  lengthM: z.number(),
  widthM: z.number(),
  depthM: z.number().optional(),
  raised: z.boolean(),
  watered: z.boolean(),
  plannedFor: day.optional(),
});

const bin = z.strictObject({
  id: z.string(),
  name: z.string(),
  volumeL: z.number(),
  closed: z.literal(true).optional(),
});

/** A crop that a season grew in a bed, by the season it counts to. */
const past = z.strictObject({ bed: z.string(), crop: z.string(), season: z.number().int() });

const planting = z.strictObject({
  bed: z.string(),
  crop: z.string(),
  sow: day.optional(),
  setOut: day.optional(),
});

const stand = z.strictObject({ bed: z.string(), cover: z.string().optional(), mix: z.string().optional(), sow: day });

const pile = z.strictObject({
  bin: z.string(),
  built: day,
  method: z.enum(['hot', 'cold']),
  ingredients: z.array(z.strictObject({ material: z.string(), litres: z.number() })),
});

/** What is kept of a garden being set up. */
export const setUpDraftSchema = z.strictObject({
  place: place.optional(),
  climate: climate.optional(),
  about: about.optional(),
  beds: z.array(bed),
  bins: z.array(bin),
  past: z.array(past),
  plantings: z.array(planting),
  stands: z.array(stand),
  piles: z.array(pile),
  /** Steps that were gone on from. */
  passed: z.array(z.enum(SET_UP_STEPS)),
  /** Presses that added something, so that the same pressed again adds nothing. */
  pressed: z.array(z.string()).optional(),
});

/** A garden being set up. */
export type SetUpDraft = z.infer<typeof setUpDraftSchema>;
/** Where it lies, as far as it was told. */
export type DraftPlace = z.infer<typeof place>;
/** What its climate is to be taken from. */
export type DraftClimate = z.infer<typeof climate>;
/** Its name, zone, units, days, hours and soil. */
export type DraftAbout = z.infer<typeof about>;
/** A bed of it. */
export type DraftBed = z.infer<typeof bed>;
/** A bin of it. */
export type DraftBin = z.infer<typeof bin>;

/** A draft before the first word. */
export const EMPTY_DRAFT: SetUpDraft = {
  beds: [],
  bins: [],
  past: [],
  plantings: [],
  stands: [],
  piles: [],
  passed: [],
};

/** The step to go on with: the first that was not gone on from. */
export function nextStep({ passed }: Pick<SetUpDraft, 'passed'>): SetUpStep {
  return SET_UP_STEPS.find((step) => !passed.includes(step)) ?? 'look-over';
}

/** A draft without a bed, and without what was told of it. */
export function withoutBed(draft: SetUpDraft, bedId: string): SetUpDraft {
  const stays = ({ bed: id }: { bed: string }) => id !== bedId;
  return {
    ...draft,
    beds: draft.beds.filter(({ id }) => id !== bedId),
    past: draft.past.filter(stays),
    plantings: draft.plantings.filter(stays),
    stands: draft.stands.filter(stays),
  };
}

/** A draft without a bin, and without the pile in it. */
export function withoutBin(draft: SetUpDraft, binId: string): SetUpDraft {
  return {
    ...draft,
    bins: draft.bins.filter(({ id }) => id !== binId),
    piles: draft.piles.filter(({ bin: id }) => id !== binId),
  };
}
