/**
 * What the garden file's schema lets a key be, for whoever asks for it in a form: so that a limit is written once.
 */
import { z } from 'zod';
import { type GardenFile, gardenFileSchema } from './garden-file.ts';

/** What a key may be. */
export interface KeyLimits {
  /** Whether a row cannot be without it. */
  required: boolean;
  /** Ends of a number, both allowed, in the unit of the file. */
  least?: number;
  most?: number;
}

/**
 * The limits of a key of a list's rows or of a part; no key of the file has none.
 *
 * @param path the way to it from the row: "lengthM", "seen.on", "again.times"
 */
export function limitsOf(list: keyof GardenFile, path: string): KeyLimits {
  let held: unknown = gardenFileSchema.shape[list];
  for (const key of path.split('.')) {
    const row = withoutWrap(held);
    if (!(row instanceof z.ZodObject)) return { required: false };
    held = row.shape[key];
  }
  if (!(held instanceof z.ZodType)) return { required: false };
  const value = withoutWrap(held);
  const required = !held.safeParse(undefined).success;
  if (!(value instanceof z.ZodNumber)) return { required };
  const { minValue, maxValue } = value;
  return {
    required,
    ...(minValue !== null && Number.isFinite(minValue) ? { least: minValue } : {}),
    ...(maxValue !== null && Number.isFinite(maxValue) ? { most: maxValue } : {}),
  };
}

/** Whether something is what a list of the file may hold as a row, or the file as a part. */
export function isRowOf(list: keyof GardenFile, row: unknown): boolean {
  const schema = withoutWrap(gardenFileSchema.shape[list]);
  return schema instanceof z.ZodType && schema.safeParse(row).success;
}

/** A schema without what makes it optional, and without the list it is the row of. */
function withoutWrap(held: unknown): unknown {
  if (held instanceof z.ZodOptional || held instanceof z.ZodDefault) return withoutWrap(held.unwrap());
  if (held instanceof z.ZodArray) return withoutWrap(held.element);
  return held;
}
