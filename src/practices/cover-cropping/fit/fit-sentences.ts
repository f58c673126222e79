/**
 * The sentences for and against a choice.
 */
import { dated } from '../../../measures/quantity.ts';
import type { Practice } from '../../practice.ts';

/** Why a choice is forbidden, or speaks against itself. */
export const fitSentences: Practice['sentences'] = {
  'cover-fit.no-dates': () =>
    'No freeze date is known for this garden, so nothing can be said about covers: a climate in the garden file would tell.',
  'cover-fit.never-then': ({ saw }) =>
    saw.to === undefined
      ? `No time to sow ${saw.cover} lies ahead in this gap.`
      : `No time to sow ${saw.cover} lies in this gap, which ends on ${dated(String(saw.to))}.`,
  'cover-fit.no-room': ({ saw, limit }) =>
    `${capital(saw.cover)} wants ${limit} days to be worth its seed, and time to be cut and settle: they do not fit ` +
    `before ${dated(String(saw.to))}.`,
  'cover-fit.disease': ({ saw }) =>
    `It would carry the ${saw.disease} found here on ${dated(String(saw.found))}` +
    (saw.until === undefined ? '.' : ` and is kept out until ${dated(String(saw.until))}.`),
  'cover-fit.cabbage-kin': ({ saw }) =>
    `${capital(saw.cover)} is of the cabbage family, as ${saw.crop} is: clubroot and flea beetles would be handed on.`,
  'cover-fit.legume-kin': ({ saw }) =>
    `${capital(saw.cover)} is a legume beside ${saw.crop}: it would keep the root rots of peas and beans alive.`,
  'cover-fit.vine-after-mustard': ({ saw }) =>
    `${capital(saw.crop)} sprouts poorly straight after ${saw.cover} that grew in spring.`,
  'cover-fit.mulch-always': () => 'It serves in any gap and asks nothing of the season: nothing has to grow or be cut.',
};

function capital(value: unknown): string {
  const words = String(value);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
