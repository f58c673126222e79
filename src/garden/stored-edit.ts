/**
 * Changes to what a garden was told, as the ledger keeps them: only what changed, so that a change still gives sense where
 * something told before it was taken back.
 */
import { z } from 'zod';
import { loggedDay, realDay } from './logged-day.ts';

/** The lists of a garden file whose rows have ids. */
export const ID_LISTS = ['beds', 'plantings', 'coverStands', 'bins', 'piles'] as const;

/** The lists of a garden file whose rows are what they say. */
export const ROW_LISTS = [
  'mulches',
  'topdressed',
  'fed',
  'compostBought',
  'away',
  'gear',
  'seeds',
  'wishes',
  'soilTests',
  'soilSqueezes',
  'diseases',
  'coldNights',
] as const;

const row = z.record(z.string(), z.unknown());

/** One row of a list: with `was` alone taken out, with `row` alone added, with both changed. */
const rowChange = z.object({ was: z.unknown().optional(), row: z.unknown().optional() });

/** One value: what it was, and what it is now; absent where it was or is not given. */
const fieldChange = z.object({ key: z.string(), was: z.unknown().optional(), is: z.unknown().optional() });

const item = { list: z.enum(ID_LISTS), id: z.string() };

/** What an edit must look like to be read back from where it was kept. */
const storedEdit = z.discriminatedUnion('how', [
  z.object({ how: z.literal('added'), ...item, row }),
  z.object({ how: z.literal('gone'), ...item, row }),
  z.object({
    how: z.literal('changed'),
    ...item,
    /** What it goes by: its name, or what grows where and from when. */
    goesBy: row,
    fields: z.array(fieldChange),
    /** Its logs, and which of its dates are plans: row by row. */
    logs: z.array(z.object({ key: z.string(), rows: z.array(rowChange) })),
  }),
  z.object({ how: z.literal('row'), list: z.enum(ROW_LISTS), was: row.optional(), row: row.optional() }),
  z.object({ how: z.literal('part-changed'), part: z.enum(['garden', 'household']), fields: z.array(fieldChange) }),
  z.object({
    how: z.literal('part-replaced'),
    part: z.enum(['climate', 'topdressing']),
    was: row.optional(),
    row: row.optional(),
  }),
  z.object({ how: z.literal('days'), days: z.array(loggedDay).min(1) }),
  z.object({
    how: z.literal('days-gone'),
    days: z.array(z.object({ day: realDay, kind: z.enum(['observed', 'expected']) })).min(1),
  }),
]);

/** What was told before, changed afterwards. */
export const gardenMended = z.object({ kind: z.literal('garden-mended'), edits: z.array(storedEdit).min(1) });

/** One change, as it is kept. */
export type StoredEdit = z.infer<typeof storedEdit>;
/** A list of the garden file whose rows have ids. */
export type IdList = (typeof ID_LISTS)[number];
/** A list of the garden file whose rows are what they say. */
export type RowList = (typeof ROW_LISTS)[number];
/** A change of one row of a list or a log. */
export type RowChange = z.infer<typeof rowChange>;
/** A change of one value. */
export type FieldChange = z.infer<typeof fieldChange>;
