/**
 * Who eats from the garden, and what greens the household brings to the pile.
 */
import { gardenPath } from '../../addresses/addresses.ts';
import type { EditKind } from './kind.ts';

/** What is told of a household besides its members, who have pages of their own. */
export const householdKind: EditKind<'household'> = {
  of: 'household',
  list: 'household',
  word: 'household',
  adds: 'Who eats from the garden, and what they bring to the pile',
  docs: 'composting',
  here: 'household',
  note: 'Who works in the garden, and sees to what, is told on the Household page and stays as it is.',
  titleOf: () => 'Who eats from the garden, and what they bring to the pile',
  fields: () => [
    {
      name: 'people',
      label: 'People who eat from it',
      as: 'number',
      example: 4,
      hint: 'How many scraps the kitchen brings to the pile, in summer and through the winter, is reckoned from it.',
    },
    {
      name: 'clippingsL',
      label: 'Grass clippings put on the pile in a week of mowing',
      as: 'volume',
      example: 40,
      hint: 'Greens to build piles with. Leave it empty where there are none.',
    },
    {
      name: 'coverCutsL',
      label: 'Cut covers carried to the pile in a year',
      as: 'volume',
      example: 100,
      hint: 'The plan leaves covers lying where they were cut; what you carry off feeds the pile in place of the bed.',
    },
  ],
  back: ({ id }) => `${gardenPath(id)}#household`,
};
