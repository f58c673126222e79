/**
 * The sentences of the soil-readiness practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import type { Practice } from '../practice.ts';

/** Every rule of the practice, in words. */
export const soilReadinessSentences: Practice['sentences'] = {
  'squeeze.awake': ({ saw, limit }) =>
    `In the middle year the soil wakes (${quantity(Number(saw.tempC), 'tempC')}) about ${dated(String(saw.awake))}; ` +
    `whether it is dry enough by then nobody can reckon yet, so a handful decides, by ${dated(String(limit))}.`,
  'squeeze.before-work': ({ saw }) =>
    `The first work planned in this soil is ${saw.what} in ${saw.bed} on ${dated(String(saw.day))}; ` +
    `${saw.days} days before it leave room for a second handful.`,
  'squeeze.again': ({ saw }) =>
    `A handful smeared on ${dated(String(saw.on))}; the next is worth squeezing ${saw.days} days on.`,
  'squeeze.drains': ({ saw }) => `${capital(String(saw.soil))} ${DRAINS[String(saw.workClass)] ?? ''}`,
  'loosen.new-ground': ({ saw }) =>
    `${saw.bed} lies at ground level, and nothing is known to have grown there before: ground that was trodden is ` +
    'loosened once. If it has been a bed for years, skip this. Raised beds that nobody treads on need none.',
  'loosen.awake': ({ saw, limit }) =>
    `The soil wakes (${quantity(Number(saw.tempC), 'tempC')}) about ${dated(String(saw.awake))}, and it has to crumble ` +
    `first: by ${dated(String(limit))}.`,
};

const DRAINS: Readonly<Record<string, string>> = {
  coarse: 'lets go of its water in about two days after a soaking.',
  medium: 'drains in two to three days after a soaking.',
  fine: 'can take weeks: draining alone is not enough, it has to dry as well, so it is squeezed week by week.',
};

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
