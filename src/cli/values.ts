/**
 * The kinds of value a command line or an environment holds. Every error text is the mend shown beside the value.
 */
import { z } from 'zod';
import { isDay } from '../measures/days.ts';

const LAST_PORT = 65_535;

/** Words, not all blank. */
export function textValue(mend: string) {
  return z.string({ error: mend }).trim().min(1, mend);
}

/** A real date. */
export const dayValue = z.string().refine(isDay, 'Give a real date as YYYY-MM-DD, such as 2027-04-18.');

/** A number between two ends, both allowed. `what` names it with its unit. */
export function numberValue(what: string, example: number, least: number, most: number) {
  const mend = `Give ${what} from ${least} to ${most}, such as ${example}.`;
  return z
    .string({ error: mend })
    .regex(/^[+-]?\d+(\.\d+)?$/, mend)
    .transform(Number)
    .pipe(z.number().min(least, mend).max(most, mend));
}

/** A port of this computer; 0 takes any that is free. */
export const portValue = z
  .string()
  .regex(/^\d{1,5}$/, 'Give a port number, such as 8137.')
  .transform(Number)
  .pipe(z.number().max(LAST_PORT, `Give a port number up to ${LAST_PORT}, such as 8137.`));

/** One word of several. */
export function choiceValue<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, { error: `Give one of ${words.join(', ')}.` });
}
