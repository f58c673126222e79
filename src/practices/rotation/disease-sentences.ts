/**
 * The sentences about diseases that were found.
 */
import { capital } from '../../measures/capital.ts';
import { dated } from '../../measures/quantity.ts';
import type { Practice } from '../practice.ts';

/** Every rule that goes back to a disease that was found. */
export const diseaseSentences: Practice['sentences'] = {
  'disease.found': ({ saw }) => `You found ${saw.disease} on the ${saw.crop} here on ${dated(String(saw.on))}.`,
  'disease.no-compost': () =>
    'What is sick stays out of the compost: a pile at home is rarely hot enough all through to end it.',
  'disease.locked-out': ({ saw }) =>
    `${capital(saw.disease)} keeps ${saw.hosts} out of this bed for ${saw.years} years from ${dated(String(saw.since))}: ` +
    `until ${dated(String(saw.until))}.`,
  'disease.closed': ({ saw }) =>
    `${capital(saw.disease)} closes this bed to ${saw.hosts}: no end is known, so none is counted.`,
  'disease.lingers': ({ saw }) =>
    `Some count ${saw.disease} alive for up to ${saw.years} years: look closely at the first of its hosts after that.`,
  'disease.not-in-handbook': ({ saw }) =>
    `The handbook has nothing on “${saw.disease}” of ${saw.crop}: the longest interval it has for the crop stands in. ` +
    'Ask a plant clinic what it is.',
  'disease.plan-clashes': ({ saw }) =>
    `${capital(saw.what)} is planned here for ${dated(String(saw.day))}; ${saw.disease} was found in the bed on ` +
    `${dated(String(saw.on))}.`,
};
