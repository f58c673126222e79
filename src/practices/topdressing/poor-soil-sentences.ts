/**
 * The case for compost on sandy and clay beds, in words.
 */
import { capital } from '../../measures/capital.ts';
import { quantity } from '../../measures/quantity.ts';
import type { Practice } from '../practice.ts';

/** A sentence for every rule of it. */
export const poorSoilSentences: Practice['sentences'] = {
  'topdress.sandy': ({ saw }) =>
    `${capital(String(saw.soil))} lets water and food run through: a spade’s depth of it (${quantity(Number(saw.depthMm), 'mm')}) ` +
    `holds about ${quantity(Number(saw.holdsMm), 'mm')} of rain for roots, of loam ${quantity(Number(saw.loamMm), 'mm')}. ` +
    'Compost holds both back, and is soon used up there: a little every year does more than much at once.',
  'topdress.clay': ({ saw }) =>
    `${capital(String(saw.soil))} that has drained as far as it does by itself is still too wet to work, and sets hard as it ` +
    'dries. Of compost left on top worms and roots make crumbs, from the top down: it drains and can be worked sooner each spring.',
  'topdress.build-up': ({ saw, limit }) =>
    `Up to ${quantity(Number(limit), 'mm')} a year builds it up: ${matterWords(saw)} to ${saw.enough} % organic matter takes about ` +
    `${saw.low} to ${saw.high} years, at half a percent to one a year (from memory).${ownWords(saw)} A soil sample every third ` +
    `autumn tells: from ${saw.enough} % on half the layer keeps it so, and at ${saw.ppm} ppm of phosphorus it ends.`,
  'topdress.build-up-rate': ({ saw }) =>
    `The ${quantity(Number(saw.lowMm), 'mm')} to ${quantity(Number(saw.highMm), 'mm')} a year that are published for the first three ` +
    'years are dug in. Nothing is dug in here, and so much on top gathers salts and phosphorus.',
  'topdress.build-up-stop': ({ saw, limit }) =>
    `The soil test found ${saw.ppm} ppm of phosphorus, and ${limit} is very high: no more is built up with compost. Covers and ` +
    'mulch go on with it; test again in a few years.',
  'topdress.no-sand': () =>
    'Sand is no cure for clay: a little of it sets between the grains like brick, and as much as would change it is half the bed.',
};

function matterWords({ from, tested }: Readonly<Record<string, unknown>>): string {
  return tested === 'yes' ? `from the ${from} % the test found` : `from ${from} % (nobody has tested it)`;
}

/** What a thinner layer comes to, and how the gardener may change it. */
function ownWords({ depthMm, ownLow, ownHigh, by }: Readonly<Record<string, unknown>>): string {
  if (depthMm === undefined) return '';
  const years = `With the ${quantity(Number(depthMm), 'mm')} it is given, about ${ownLow} to ${ownHigh}.`;
  return by === 'bed' ? ` ${years}` : ` ${years} That is yours to say: the depth of the bed, under The garden.`;
}
