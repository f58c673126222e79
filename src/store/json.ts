/**
 * JSON on its way in from the database.
 */
import type { z } from 'zod';
import { StoreFault } from './fault.ts';

/**
 * Stored JSON as the type it was stored as.
 *
 * @param where the row it comes from, for the error
 * @throws {StoreFault} with every difference when it is something else
 */
export function parseJson<Value>(schema: z.ZodType<Value>, json: string, where: string): Value {
  const parsed = schema.safeParse(readJson(json));
  if (parsed.success) return parsed.data;
  const problems = parsed.error.issues.map((issue) => ({
    where: [where, ...issue.path].join(' › '),
    what: `${issue.message}.`.replace(/\.\.$/, '.'),
    mend: 'Put back a copy made before (docs/copies-and-faults.md).',
  }));
  throw new StoreFault(problems, 'Something in the database cannot be read.');
}

function readJson(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
