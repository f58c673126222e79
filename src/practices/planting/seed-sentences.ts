/**
 * The sentences of seed tested and ordered in time.
 */
import { dated } from '../../measures/quantity.ts';
import type { Practice, Sentence } from '../practice.ts';

const years = (count: unknown): string => `${count} ${Number(count) === 1 ? 'year' : 'years'}`;

const packet: Sentence = ({ saw, limit }) =>
  `The ${saw.crop} was packed for ${saw.packedYear} and will be ${years(saw.ageYears)} old; kept dry and cool it is good for ` +
  `about ${years(limit)}`;

/** Every rule of seed, in words. */
export const seedSentences: Practice['sentences'] = {
  'seed.lead': ({ saw, limit }) =>
    `First needed is ${saw.crop}, ${USES[String(saw.use)] ?? ''} on ${dated(String(saw.day))}; ${saw.days} days are kept for ` +
    `packing and post: order by ${dated(String(limit))}.`,
  'seed.old': (reason) => `${packet(reason)}: it is not counted on.`,
  'seed.last-year': (reason) => `${packet(reason)}: worth a test.`,
  'seed.test': ({ saw }) =>
    `${saw.seeds} seeds are enough to tell good seed from poor; slow kinds need ${saw.days} days.`,
  'seed.chitting': ({ saw }) =>
    `Seed potatoes are wanted from ${dated(String(saw.day))}: ${saw.days} days in the light give short green shoots and an ` +
    'earlier crop.',
  'seed.unwritten': () =>
    'Nobody has said what seed is in the drawer, so everything is on the list: add packets under The garden and it shrinks.',
  'seed.garlic': ({ saw, limit }) =>
    `Garlic goes in on ${dated(String(saw.day))}, and sellers are out of it or close their lists weeks before: order by ` +
    `${dated(String(limit))}.`,
};

const USES: Readonly<Record<string, string>> = {
  indoors: 'to be sown indoors',
  outdoors: 'to go into its bed',
  chitting: 'to be stood in the light',
};
