/**
 * The kinds of value a command line or an environment holds. Every error text is the mend shown beside the value.
 */
import { isIP } from 'node:net';
import { z } from 'zod';
import { type Measured, WEATHER_LIMITS } from '../../garden/weather-limits.ts';
import { isDay } from '../../measures/days.ts';
import { readDepthMm } from '../../measures/typed-amount.ts';
import { readDegrees } from '../../measures/typed-temperature.ts';

const LAST_PORT = 65_535;

/** Words, not all blank. */
export function textValue(mend: string) {
  return z.string({ error: mend }).trim().min(1, mend);
}

const DAY_MEND = 'Give a real date as YYYY-MM-DD, such as 2027-04-18.';

/** A real date. */
export const dayValue = z.string({ error: DAY_MEND }).refine(isDay, DAY_MEND);

/** The years that can be planned in: those a garden file may name. */
const [FIRST_DAY, LAST_DAY] = ['1900-01-01', '2200-12-31'];
const TODAY_MEND = `Give a real date from ${FIRST_DAY} to ${LAST_DAY}, such as 2027-04-18.`;

/** A date that can be taken for today. */
export const todayValue = z
  .string({ error: TODAY_MEND })
  .refine((text) => isDay(text) && text >= FIRST_DAY && text <= LAST_DAY, TODAY_MEND);

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

/** An address of this computer to listen on. */
export const listenAddress = z
  .string()
  .trim()
  .refine((text) => text === 'localhost' || isIP(text) !== 0, {
    error: 'Give an address of this computer in numbers: 127.0.0.1, 192.168.1.20, or 0.0.0.0 for all of them.',
  });

/** One word of several. */
export function choiceValue<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, { error: `Give one of ${words.join(', ')}.` });
}

/** Several words of a list, with commas between. */
export function choicesValue<const Word extends string>(words: readonly Word[]) {
  const mend = `Give one or more of ${words.join(', ')}, with commas between.`;
  return z.string({ error: mend }).transform((text, context) => {
    const given = text.split(',').map((word) => word.trim());
    if (given.every((word) => (words as readonly string[]).includes(word)))
      return words.filter((word) => given.includes(word));
    context.addIssue({ code: 'custom', message: mend });
    return z.NEVER;
  });
}

/** A depth with its unit written, as millimetres, within what a day can bring. */
export function depthValue(measured: Measured, example: string) {
  const { least, most } = WEATHER_LIMITS[measured];
  const mend = `Give a depth with its unit, such as ${example}, up to ${most / 10}cm.`;
  return z.string({ error: mend }).transform((text, context) => {
    const depthMm = readDepthMm(text);
    if (depthMm !== undefined && depthMm >= least && depthMm <= most) return depthMm;
    context.addIssue({ code: 'custom', message: mend });
    return z.NEVER;
  });
}

/** A temperature with its unit written, as °C, within what a day can bring. */
export function degreesValue(measured: Measured) {
  const { least, most } = WEATHER_LIMITS[measured];
  const mend = `Give degrees with their unit, such as -1C or 30F, between ${least}C and ${most}C.`;
  return z.string({ error: mend }).transform((text, context) => {
    const tempC = readDegrees(text);
    if (tempC !== undefined && tempC >= least && tempC <= most) return tempC;
    context.addIssue({ code: 'custom', message: mend });
    return z.NEVER;
  });
}
