/**
 * The sentences of the mulching practice.
 */
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { firstFreezeOf } from '../freeze-words.ts';
import type { Practice, Sentence } from '../practice.ts';

const amount =
  (laid: string): Sentence =>
  ({ saw }) =>
    `${laid} ${quantity(Number(saw.depthMm), 'mm')} deep over ${quantity(Number(saw.areaM2), 'm2')} takes ` +
    `${quantity(Number(saw.litres), 'L')} as piled.`;

/** Every rule of the practice, in words. */
export const mulchSentences: Practice['sentences'] = {
  'mulch-bare.winter': ({ saw, limit }) =>
    `The ground can be covered from ${dated(String(saw.from))}, and ${firstFreezeOf(24)} comes about ${dated(String(saw.freeze))}: ` +
    `leaves or straw go on by ${dated(String(limit))}.`,
  'mulch-bare.in-season': ({ saw, limit }) =>
    `The ground can be covered from ${dated(String(saw.from))}` +
    `${saw.days === undefined ? '' : `, and would lie open for ${saw.days} days`}: mulch goes on by ` +
    `${dated(String(limit))}.`,
  'mulch-bare.amount': amount('A blanket of leaves'),
  'mulch-garlic.freeze': ({ saw, limit }) =>
    `${capital(saw.crop)} planted on ${dated(String(saw.planted))} roots for ${saw.days} days or more, and is covered ` +
    `once the cold has come to stay, after ${firstFreezeOf(24)}, about ${dated(String(saw.freeze))}: by ${dated(String(limit))}.`,
  'mulch-garlic.amount': amount('Straw or leaves'),
  'uncover-garlic.awake': ({ saw, limit }) =>
    `The soil wakes (${quantity(Number(saw.tempC), 'tempC')}) about ${dated(String(saw.awake))} in the middle year and ` +
    `shoots push up: the ${saw.crop} is uncovered by ${dated(String(limit))}.`,
  'mulch-warm.soil': ({ saw, limit }) =>
    `The soil holds ${quantity(Number(saw.tempC), 'tempC')} from about ${dated(String(saw.warm))} in the middle year; ` +
    `mulch laid sooner keeps it cold. The ${saw.crop} goes in on ${dated(String(saw.planted))} and takes ` +
    `${saw.days} days to take hold: from ${dated(String(limit))} on.`,
  'mulch-warm.amount': amount('Straw'),
  'residue-aside.small-seed': ({ saw, limit }) =>
    `Small seed wants warm, bare rows. ${capital(saw.crop)} is sown on ${dated(String(saw.sow))}, and ${saw.what} is ` +
    `drawn aside ${saw.daysLast} to ${saw.daysFirst} days before that, or once it is down: by ${dated(String(limit))}.`,
};
