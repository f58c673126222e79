/**
 * The sentences of the fertility practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import { firstFreezeOf } from '../freeze-words.ts';
import type { Practice } from '../practice.ts';
import { ledgerSentences } from './ledger-sentences.ts';

const grams = (value: unknown): string => quantity(Number(value), 'gPerM2');

/** Every rule of the practice, in words. */
export const fertilitySentences: Practice['sentences'] = {
  ...ledgerSentences,
  'soil-sample.first': ({ saw }) =>
    `No soil test is known of: one in the first autumn, and one every ${saw.years} years after it.`,
  'soil-sample.due': ({ saw }) =>
    `The last sample was taken on ${dated(String(saw.on))}; the next is due in the autumn ${saw.years} years on.`,
  'soil-sample.autumn': ({ saw, limit }) =>
    `In autumn laboratories are quiet and lime has winter to act: from ${saw.weeks} weeks before ${firstFreezeOf(32)} ` +
    `(about ${dated(String(saw.freeze))}) until harder cold, by ${dated(String(limit))}.`,
  'soil-sample.before-layer': ({ saw }) =>
    `It comes before the autumn compost, which it would measure: the first layer is best spread in ${saw.bed}, about ` +
    `${dated(String(saw.day))}.`,
  'feed.short': ({ saw }) =>
    `Over the season ${grams(saw.wantsGPerM2)} of nitrogen are wanted where the ${saw.crop} stands, by it and what goes ` +
    `before or after it. The bed gives ${grams(saw.givesGPerM2)} by the usual figures and ${grams(saw.bestGPerM2)} at best: ` +
    `${grams(saw.shortGPerM2)} short. ${quantity(Number(saw.nitrogenG), 'g')} in all fall on the ${saw.crop}.`,
  'feed.test-first': () => 'Nobody has tested this soil: a test may make this meal needless.',
  'feed.phosphorus': ({ saw, limit }) =>
    `The soil test found ${saw.ppm} ppm of phosphorus, and ${limit} is very high: only what brings none is given.`,
  'feed.garlic-spring': () =>
    'Garlic is fed in spring, when it grows: mid-April in Maryland, here when the soil wakes.',
  'feed.analysis': ({ saw }) => `${saw.meal} is bought by its analysis, ${saw.analysis}: nitrogen, phosphate, potash.`,
  'bone-meal.low': ({ saw, limit }) =>
    `The test of ${dated(String(saw.on))} found ${saw.ppm} ppm of phosphorus, which is low: below ${limit}.`,
  'bone-meal.rate': ({ saw }) =>
    `A plain dressing brings ${grams(saw.phosphateGPerM2)} of phosphate; bone meal of ${saw.analysis} is a little over a ` +
    'quarter phosphate.',
  'bone-meal.awake': ({ saw, limit }) =>
    `Phosphate stays where it is put, so it goes among the roots before the first crop does: from when the soil wakes ` +
    `(${quantity(Number(saw.tempC), 'tempC')}, about ${dated(String(saw.awake))}) to ${dated(String(limit))}.`,
};
