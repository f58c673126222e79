/**
 * The yearly layer of compost.
 */
import { gardenPath } from '../../addresses/addresses.ts';
import type { EditKind } from './kind.ts';

/** How the yearly layer is given. */
export const topdressingKind: EditKind<'topdressing'> = {
  of: 'topdressing',
  list: 'yearly-layer',
  word: 'yearly layer',
  docs: 'topdressing',
  here: 'compost',
  note:
    'How much compost each bed is given in a year. Taken out, it is an inch in autumn, and half of that where a soil ' +
    'test finds the soil rich; a bed can have a depth of its own.',
  titleOf: () => 'The yearly layer of compost',
  fields: () => [
    {
      name: 'depthMm',
      label: 'How deep',
      as: 'depth',
      example: 13,
      hint: 'How much compost is wanted, and when the yard runs short of it, are reckoned from it.',
    },
    {
      name: 'season',
      label: 'When',
      as: 'choice',
      open: true,
      options: [
        { value: 'autumn', words: 'In autumn, once the beds are cleared' },
        { value: 'spring', words: 'In spring, before they are planted' },
      ],
    },
  ],
  back: ({ id }) => `${gardenPath(id)}#care`,
};
