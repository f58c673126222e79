/**
 * The values a garden file is made of. Every error text is the mend shown beside the value that was refused.
 */
import { z } from 'zod';
import { isDay, isMonthDay } from '../measures/days.ts';
import { suggestion } from './nearest-name.ts';

/** A line of words. */
export const text = (mend: string) =>
  z.string({ error: mend }).trim().min(1, mend).max(200, 'Shorten it to 200 characters.');
/** An id: short, lasting, and safe in an address. */
export const id = z
  .string({ error: 'Give a short id such as north-bed, or leave it out.' })
  .regex(/^[a-z0-9][a-z0-9_.-]{0,79}$/, 'Use small letters, digits and hyphens, such as north-bed.');
/** A real date. */
export const day = z
  .string({ error: 'Give a date in quotes as YYYY-MM-DD, such as "2027-04-18".' })
  .refine(isDay, 'Give a real date as YYYY-MM-DD, such as "2027-04-18".');
/** An hour of the day by the clock. */
export const clock = z
  .string({ error: 'Give the hour in quotes as HH:MM, such as "14:30".' })
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'Give a real hour as HH:MM, such as "14:30".');
/** A real month and day. */
export const monthDay = z
  .string({ error: 'Give month and day in quotes, such as "05-10".' })
  .refine(isMonthDay, 'Give a real month and day as MM-DD, such as "05-10".');
/** A number between two ends, both allowed. `what` names it with its unit. */
export function number(what: string, example: number, least: number, most: number) {
  const mend = `Give ${what} from ${least} to ${most}, such as ${example}.`;
  return z.number({ error: mend }).min(least, mend).max(most, mend);
}
/** An amount in litres. */
export const litres = (example: number) => number('litres', example, 0, 100_000);
/** One word of several. */
export const choice = <const T extends readonly [string, ...string[]]>(options: T) =>
  z.enum(options, { error: `Give one of ${options.join(', ')}.` });

/** An object that refuses keys it does not know: one line of the message for each, naming the nearest it does. */
export function known<Shape extends z.core.$ZodLooseShape>(what: string, shape: Shape) {
  const keys = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? issue.keys.map((key: string) => suggestion(key, keys)).join('\n')
        : `Give ${what} with ${keys.join(', ')}.`,
  });
}

/** Whether just one of some keys is given. */
export function justOne(given: object, keys: readonly string[]): boolean {
  return keys.filter((key) => Reflect.get(given, key) !== undefined).length === 1;
}

/** Whether a day is not before another; nothing is said of what is not a day. */
export function notBefore(later: unknown, earlier: unknown): boolean {
  if (typeof later !== 'string' || typeof earlier !== 'string' || !isDay(later) || !isDay(earlier)) return true;
  return later >= earlier;
}

/**
 * The same of every day in a list, or of every item's `on`: for `superRefine`, with {@link anyhow}. Each that is before is
 * refused in its own place.
 */
export function everyNotBefore(list: string, earlier: string, mend: string) {
  return (
    given: object,
    { addIssue }: { addIssue: (issue: { code: 'custom'; path: PropertyKey[]; message: string }) => void },
  ): void => {
    const [held, first]: unknown[] = [Reflect.get(given, list), Reflect.get(given, earlier)];
    for (const [at, item] of (Array.isArray(held) ? held : []).entries()) {
      const isDated = typeof item === 'object' && item !== null;
      if (notBefore(isDated ? Reflect.get(item, 'on') : item, first)) continue;
      addIssue({ code: 'custom', path: [list, at, ...(isDated ? ['on'] : [])], message: mend });
    }
  };
}

/** A rule across several keys, checked even when one of them is wrong, so that every problem shows at once. */
export function across(mend: string, ...path: string[]) {
  return { error: mend, path, ...anyhow };
}

/** Checked even where a key is wrong. */
export const anyhow = { when: ({ value }: { value: unknown }) => typeof value === 'object' && value !== null };

/** Which of an item's dates are still plans, where that cannot be told from the day the file is read. */
export const planned = <const T extends readonly [string, ...string[]]>(dates: T) =>
  z.array(choice(dates), { error: `Give a list of ${dates.join(', ')}.` }).optional();

/** A list, empty where it is left out. */
export const list = <Item extends z.ZodType>(item: Item, what: string) =>
  z.array(item, { error: `Give a list of ${what}, each starting with a hyphen.` }).default([]);
