/**
 * The sentences of the topdressing practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import { firstFreezeOf } from '../freeze-words.ts';
import type { Practice, Sentence } from '../practice.ts';
import { poorSoilSentences } from './poor-soil-sentences.ts';

const supply: Sentence = ({ saw }) => {
  const [litres, fromBins] = [Number(saw.litres), Number(saw.fromBins)];
  if (fromBins >= litres) return `The bins will have enough for it from ${dated(String(saw.ready))} on.`;
  if (fromBins <= 0) return 'Nothing is left in the bins for it by then: it hangs on the compost order.';
  return (
    `The bins will give ${quantity(fromBins, 'L')} of it from ${dated(String(saw.ready))} on; the rest hangs on the ` +
    'compost order.'
  );
};

/** Where a layer goes whose compost comes too late for its usual days. */
const MOVED: Readonly<Record<string, string>> = {
  spring: 'it goes on in spring instead',
  'to the day': 'it may go on up to the day before the next sowing or planting',
  'among crops': 'it goes on among what grows by then',
};

/** Every rule of the practice, in words. */
export const topdressSentences: Practice['sentences'] = {
  'topdress.own-depth': ({ saw }) =>
    `The household gives every bed ${quantity(Number(saw.depthMm), 'mm')} of compost in ${saw.season}.`,
  'topdress.bed-depth': ({ saw }) =>
    `This bed has a depth of its own: ${quantity(Number(saw.depthMm), 'mm')} of compost in ${saw.season}.`,
  'topdress.default-depth': ({ saw }) =>
    `Nobody has said how deep, nor measured the soil: ${quantity(Number(saw.depthMm), 'mm')} a year, the most an ` +
    'established bed is given. Rich soil does with half of it. It can be said under The garden.',
  'topdress.rich-soil': ({ saw }) =>
    `The soil test found ${saw.organicMatterPercent} % organic matter, which is rich: ` +
    `${quantity(Number(saw.depthMm), 'mm')} a year keeps it so.`,
  ...poorSoilSentences,
  'topdress.volume': ({ saw }) =>
    `${quantity(Number(saw.areaM2), 'm2')} of bed at ${quantity(Number(saw.depthMm), 'mm')} takes ` +
    `${quantity(Number(saw.litres), 'L')}.`,
  'topdress.thinner': ({ saw }) =>
    `The beds of this season lack only ${quantity(Number(saw.lacking), 'L')} in all, too little to order: each is given ` +
    `${saw.percent} % of its layer, here ${quantity(Number(saw.litres), 'L')}.`,
  'topdress.thinner-now': ({ saw, limit }) =>
    `The bins give ${saw.percent} % of this layer, here ${quantity(Number(saw.litres), 'L')}. The rest would be ordered, and is ` +
    `here and tested with beans about ${dated(String(saw.comes))} at the soonest, after ${dated(String(limit))}: it is ` +
    'spread thinner.',
  'topdress.in-hand': ({ saw, limit }) =>
    `Compost from elsewhere is here and tested with beans about ${dated(String(saw.comes))} at the soonest, and this layer ` +
    `was to be on by ${dated(String(limit))}: ${MOVED[String(saw.how)]}.`,
  'topdress.autumn': ({ saw, limit }) =>
    `${saw.before === undefined ? 'The bed is free' : `The ${saw.before} is out about ${dated(String(saw.out))}`}, and ` +
    `autumn's layer can go on from ${dated(String(saw.opens))}. It goes under whatever is sown next and before ` +
    `${firstFreezeOf(24)} (about ${dated(String(saw.freeze))}): by ${dated(String(limit))}.`,
  'topdress.spring': ({ saw, limit }) =>
    (saw.awake === undefined
      ? `The soil is awake (${quantity(Number(saw.tempC), 'tempC')}) already at midwinter`
      : `The soil wakes (${quantity(Number(saw.tempC), 'tempC')}) about ${dated(String(saw.awake))}`) +
    (saw.next === undefined ? '' : `, and ${saw.next} goes in on ${dated(String(saw.day))}`) +
    `: the layer goes on by ${dated(String(limit))}.`,
  'topdress.supply': supply,
  'compost-order.short': ({ saw }) =>
    `The beds want ${quantity(Number(saw.need), 'L')} and the bins will give ` +
    `${Number(saw.have) > 0 ? quantity(Number(saw.have), 'L') : 'nothing'} in time: ` +
    `${quantity(Number(saw.litres), 'L')} short, rounded up, by ${dated(String(saw.day))}.`,
  'compost-begin.in-time': ({ saw, limit }) =>
    `${quantity(Number(saw.litres), 'L')} of compost are short by ${dated(String(saw.day))}. A hot pile gives four tenths of ` +
    `its volume, after up to 120 days of warm weather and four weeks of curing: ${quantity(Number(saw.raw), 'L')} of raw ` +
    `stuff, built by ${dated(String(limit))}.`,
  'compost-test.delivered': ({ saw }) =>
    `${quantity(Number(saw.litres), 'L')} came on ${dated(String(saw.on))}. Weedkiller that outlasts composting shows in ` +
    `beans within ${saw.daysLow} to ${saw.daysHigh} days.`,
  'compost-test.ordered': ({ saw }) =>
    `${quantity(Number(saw.litres), 'L')} were ordered on ${dated(String(saw.on))} and should be here about ` +
    `${dated(String(saw.here))}. Weedkiller that outlasts composting shows in beans within ${saw.daysLow} to ` +
    `${saw.daysHigh} days.`,
  'compost-order.lead': ({ saw, limit }) =>
    `Delivery and a bean test take ${saw.daysLast} to ${saw.daysFirst} days: order by ${dated(String(limit))}.`,
};
