/**
 * Times away, and nights that were cold or are to be.
 */
import { fullDay } from '../../../digest/words.ts';
import { gardenPath } from '../../addresses/addresses.ts';
import type { Field } from '../../fields/field.ts';
import type { EditKind } from './kind.ts';

/** A time away. */
export const awayKind: EditKind<'away'> = {
  of: 'away',
  list: 'away',
  word: 'time away',
  docs: 'away-and-missed',
  note: 'On days away nobody works here: work is pulled forward, waits, or is left to somebody.',
  mends: { to: 'Give a day that is not before the one you are away from.' },
  titleOf: ({ from, to }, { place: { units } }) => `Away from ${fullDay(from, units)} to ${fullDay(to, units)}`,
  fields: () => [
    { name: 'from', label: 'Away from', as: 'day' },
    {
      name: 'to',
      label: 'Away to, that day too',
      as: 'day',
      hint: 'Not sure when you will be back? Give the latest day it could be.',
    },
  ],
  back: ({ id }) => `${gardenPath(id)}#days`,
};

const EVENING: Field = { name: 'evening', label: 'The evening it begins on', as: 'day' };

/** A cold night. */
export const coldNightKind: EditKind<'coldNights'> = {
  of: 'coldNights',
  list: 'cold-nights',
  word: 'cold night',
  docs: 'frost-watch',
  here: 'weather',
  note: 'What to cover and pick before it, and what to look at after it, hang on its low.',
  titleOf: ({ evening }, { place: { units } }) => `The night of ${fullDay(evening, units)}`,
  fields: () => [
    EVENING,
    { name: 'lowC', label: 'The low of the night', as: 'temp', example: -2 },
    {
      name: 'how',
      label: 'Is it expected or measured?',
      as: 'choice',
      open: true,
      options: [
        { value: 'expected', words: 'Expected: a forecast names it' },
        { value: 'measured', words: 'Measured: a thermometer in the garden showed it' },
      ],
    },
  ],
  rowIn(form, about) {
    const row = form.row(this.fields(about), about.row);
    if (row.how === 'measured' && typeof row.evening === 'string' && row.evening > about.view.plan.today)
      form.refuse(
        EVENING,
        'That evening is still to come.',
        'Give an evening up to today, or choose that it is expected.',
      );
    return row;
  },
  back: ({ id }) => `${gardenPath(id)}#days`,
};
