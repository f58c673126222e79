/**
 * Compost bins.
 */
import { compostPath } from '../../addresses/addresses.ts';
import type { EditKind } from './kind.ts';

/** The least bin that heats by itself, in the reader's units first. */
const SIZE = {
  us: '3 x 3 x 3 ft: that is 27 cu ft, or 765 L',
  metric: '0.91 x 0.91 x 0.91 m: that is about 760 L, or 27 cu ft',
} as const;

/** A bin. */
export const binKind: EditKind<'bins'> = {
  of: 'bins',
  list: 'bins',
  word: 'bin',
  docs: 'composting',
  here: 'compost',
  titleOf: ({ name }) => name,
  fields: ({ view }) => [
    { name: 'name', label: 'What you call it', as: 'text', example: 'Left bay', hint: 'Tasks and calendars name it.' },
    {
      name: 'volumeL',
      label: 'What it holds',
      as: 'volume',
      example: 765,
      hint: `A volume, or length by width by height inside, such as ${SIZE[view.garden.place.units]}, and the least that heats by itself. How much goes into a pile is reckoned from it.`,
    },
    {
      name: 'closed',
      label: 'Closed all round, with a lid',
      as: 'check',
      unticked: 'absent',
      hint: 'Kitchen scraps go to a closed bin, which keeps rats out. A large one makes its hot record in three days.',
    },
  ],
  back: ({ id }) => compostPath(id),
};
