/**
 * The sentences about raw manure and the harvest; tasks of other practices give them too.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import type { Practice } from '../practice.ts';

/** Every rule about raw manure, in words. */
export const manureSentences: Practice['sentences'] = {
  'manure-wait.as-raw': ({ saw }) =>
    `The pile it is taken from holds ${saw.manure}. Its log shows ${saw.days} days at ${quantity(Number(saw.tempC), 'tempC')} and ` +
    `${saw.turns} turns among them; ` +
    (saw.unfit === undefined
      ? `without ${saw.daysWanted} and ${saw.turnsWanted} its compost counts as raw manure.`
      : `whatever it shows, its compost counts as raw manure: ${saw.unfit}.`),
  'manure-wait.clash': ({ saw, limit }) =>
    `The published wait is ${saw.days} days from raw manure to the harvest of ${saw.crop}: from ${dated(String(saw.spread))} to ` +
    `${dated(String(limit))}. The first of it may be ripe on ${dated(String(saw.ripe))}.`,
  'manure-wait.by': ({ saw, limit }) =>
    `The first of the ${saw.crop} may be ripe on ${dated(String(saw.ripe))}, and the published wait after raw manure is ` +
    `${saw.days} days: on the bed by ${dated(String(limit))}.`,
  'manure-wait.standing': ({ saw }) =>
    `The ${saw.crop} stands there on ${dated(String(saw.spread))}. Raw manure is not spread among growing crops.`,
};
