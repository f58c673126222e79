/**
 * A line of the season's record: one thing that was done, seen or skipped, with its day.
 */
import { z } from 'zod';
import { isDay } from '../../measures/days.ts';

/** What a line may tell of. */
const DOINGS = [
  'sown',
  'planted',
  'started-indoors',
  'set-out',
  'harvest-ended',
  'cleared',
  'cover-sown',
  'cover-sown-again',
  'seed-sown',
  'cover-looked-at',
  'cover-flowering',
  'cover-cut',
  'cover-dead',
  'regrowth-looked-for',
  'regrowth-seen',
  'regrowth-cut',
  'sheet-laid',
  'sheet-lifted',
  'compost-spread',
  'material-spread',
  'fed',
  'mulched',
  'bed-filled',
  'soil-sampled',
  'soil-squeezed',
  'disease-found',
  'pile-built',
  'pile-read',
  'pile-turned',
  'pile-curing',
  'pile-not-ready',
  'pile-ready',
  'compost-ordered',
  'compost-delivered',
  'compost-tested',
  'ordered',
  'seed-ordered',
  'away',
  'cold-night',
  'done',
  'skipped',
  'put-off',
] as const;

/** What a line tells of. */
export type Doing = (typeof DOINGS)[number];

const day = z.string().refine(isDay, 'a real date as YYYY-MM-DD');
const text = z.string();
const whole = z.number().int();

/** The shape of a line. Amounts are SI; what is not known is left out. */
export const recordRow = z.strictObject({
  /** The season its day lies in, by the calendar year that begins in. */
  season: whole,
  on: day,
  /** The last day of what lasts: a time away. */
  to: day.optional(),
  about: z.enum(['bed', 'pile', 'garden']),
  aboutId: text,
  aboutName: text,
  doing: z.enum(DOINGS),
  /** The crop, cover, material or disease, in words. */
  what: text.optional(),
  /** The planting, cover stand or pile it was done to, by id. */
  itemId: text.optional(),
  litres: z.number().optional(),
  grams: z.number().optional(),
  /** The share of its bed a crop takes. */
  areaM2: z.number().optional(),
  tempC: z.number().optional(),
  /** What the task is reckoned to take: nobody is asked how long it took. */
  minutes: z.number().optional(),
  /** The piles compost came from, by id, with blanks between. */
  piles: text.optional(),
  /** The day its task was planned on, and the last that would have done. */
  plannedFor: day.optional(),
  lastDay: day.optional(),
  /** The task as it was called. May hold marked amounts and days, as may the note. */
  title: text.optional(),
  note: text.optional(),
  practice: text.optional(),
  task: text.optional(),
  /** Who told it, on which day, in which entry of the ledger; absent for what only the garden file tells. */
  by: text.optional(),
  toldOn: day.optional(),
  entry: whole.optional(),
  origin: z.enum(['told', 'garden-file']),
});

/** A line of the record. */
export type RecordRow = z.infer<typeof recordRow>;

/** A line before it is known who told it. */
export type Happening = Omit<RecordRow, 'season' | 'by' | 'toldOn' | 'entry' | 'origin'> & {
  /** What makes it the same thing whether a fact or the garden tells it. */
  claim: string;
  /** It counts only where the garden holds it still: a skip that was taken up again does not. */
  onlyIfHeld?: true;
  /** Its job, and the part of its minutes that is spent once however many of the job are done on the day. */
  once?: { jobId: string; minutes: number };
};
