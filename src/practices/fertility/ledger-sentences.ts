/**
 * The lines of the nitrogen ledger in sentences, each with its arithmetic.
 */
import { dated, quantity, quantitySpan } from '../../measures/quantity.ts';
import type { Practice } from '../practice.ts';

const grams = (value: unknown): string => quantity(Number(value), 'gPerM2');

/** "7.0 g/m² (3.5 to 10.5)" with each figure marked. */
const span = ({ usualGPerM2, lowGPerM2, highGPerM2 }: Readonly<Record<string, unknown>>): string =>
  `about ${grams(usualGPerM2)}, somewhere from ${quantitySpan(Number(lowGPerM2), Number(highGPerM2), 'gPerM2')}`;

const onShare = (percent: unknown, of: string): string => (Number(percent) < 100 ? `, on ${percent} % of ${of}` : '');

/** Every rule of the ledger, in words. */
export const ledgerSentences: Practice['sentences'] = {
  'ledger.wants': ({ saw }) =>
    `${saw.crop} wants ${grams(saw.wantsGPerM2)} over its season${onShare(saw.percent, 'the bed')}.`,
  'ledger.fixes': ({ saw }) => `${saw.crop} gathers its own nitrogen from the air and is given none.`,
  'ledger.soil-tested': ({ saw }) =>
    `The soil test found ${saw.percent} % organic matter. Each percent gives ${grams(saw.perPercentGPerM2)} a season, a ` +
    `cautious figure: ${grams(saw.usualGPerM2)}.`,
  'ledger.soil-untested': ({ saw }) =>
    `Nobody has tested this soil: ${saw.percent} % organic matter is taken for granted. Each percent gives ` +
    `${grams(saw.perPercentGPerM2)} a season (Vermont, a cautious figure): ${grams(saw.usualGPerM2)}.`,
  'ledger.compost': ({ saw }) => compost(saw, 'made of plants'),
  'ledger.compost-with-manure': ({ saw }) => compost(saw, 'with manure in it'),
  'ledger.compost-before': ({ saw }) =>
    `${quantity(Number(saw.depthMm), 'mm')} of compost of earlier seasons since the soil was last tested holds ` +
    `${grams(saw.wholeGPerM2)} of nitrogen. ${saw.percentUsual} % of it a year (${saw.percentLow} to ` +
    `${saw.percentHigh} %) is ${span(saw)}.`,
  'ledger.manure': ({ saw }) =>
    `${quantity(Number(saw.kgPerM2), 'kg')} of ${saw.manure} a square metre, laid on ${dated(String(saw.on))}: ` +
    `at 5 lb of nitrogen a ton where it is worked in, ${grams(saw.usualGPerM2)}. Left on top it may give less.`,
  'ledger.cover': ({ saw }) =>
    `The ${saw.cover}, over on ${dated(String(saw.on))}, holds ${dry(saw)} of dry matter with ${percents(saw)} nitrogen. By the ` +
    `line from nothing at 1.5 % to half of it at 3.5 %, or a quarter of it where it lies on top, the next crop finds ` +
    `${span(saw)}${onShare(saw.percent, 'the ground, as it was seen')}.`,
  'ledger.cover-ties-up': ({ saw }) =>
    `The ${saw.cover}, over on ${dated(String(saw.on))}, holds ${dry(saw)} of dry matter with ${percents(saw)} nitrogen. Below ` +
    `1.5 % it takes some from the soil while it rots: ${span(saw)}${onShare(saw.percent, 'the ground, as it was seen')}.`,
  'ledger.sod': ({ saw }) =>
    `The ${saw.cover} has stood for a year and more and is a sod: ${grams(saw.usualGPerM2)} (100 lb an acre)` +
    `${onShare(saw.percent, 'the ground, as it was seen')}.`,
  'ledger.fed': ({ saw }) =>
    `${quantity(Number(saw.grams), 'g')} of ${saw.fertiliser} strewn on ${dated(String(saw.on))}, ${saw.percentN} % of it ` +
    `nitrogen: ${grams(saw.usualGPerM2)} on the bed, all counted as the published rates count it. About ` +
    `${saw.percentReleased} % of it comes free within the season (from memory): ${grams(saw.lowGPerM2)}.`,
  'ledger.pulse': ({ saw }) =>
    `The ${saw.crop} before the ${saw.next} left roots and tops: ${span(saw)}${onShare(saw.percent, 'the bed')}. Most of their ` +
    'nitrogen goes with the pods.',
};

function compost(saw: Readonly<Record<string, unknown>>, made: string): string {
  return (
    `${quantity(Number(saw.depthMm), 'mm')} of compost ${made} holds ${grams(saw.wholeGPerM2)} of nitrogen where ` +
    `${saw.percentDry} % of it is dry and ${saw.percentNitrogen} % of that nitrogen. ${saw.percentUsual} % of it ` +
    `(${saw.percentLow} to ${saw.percentHigh} %) comes in the first season: ${span(saw)}.`
  );
}

function dry({ dryLowGPerM2, dryHighGPerM2 }: Readonly<Record<string, unknown>>): string {
  return quantitySpan(Number(dryLowGPerM2), Number(dryHighGPerM2), 'gPerM2');
}

function percents({ percentLow, percentHigh }: Readonly<Record<string, unknown>>): string {
  return percentLow === percentHigh ? `${percentLow} %` : `${percentLow} to ${percentHigh} %`;
}
