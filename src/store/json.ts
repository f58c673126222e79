/**
 * JSON on its way in from the database.
 */
import type { z } from 'zod';
import { InputRefused } from '../garden/problem.ts';

/**
 * Stored JSON as the type it was stored as.
 *
 * @param where the row it comes from, for the error
 * @throws {InputRefused} with every difference when it is something else
 */
export function parseJson<Value>(schema: z.ZodType<Value>, json: string, where: string): Value {
  const parsed = schema.safeParse(readJson(json));
  if (parsed.success) return parsed.data;
  throw new InputRefused(
    'Something in the database cannot be read.',
    parsed.error.issues.map((issue) => ({
      where: [where, ...issue.path].join(' › '),
      what: `${issue.message}.`.replace(/\.\.$/, '.'),
      mend: 'Put back a copy made before (see "Copies" in docs/running.md).',
    })),
  );
}

function readJson(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
