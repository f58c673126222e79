/**
 * What a household has in its shed, what it bought, and what it wishes for.
 */
import { fullDay } from '../../../digest/words.ts';
import { frostCovers } from '../../../handbook/frost-covers.ts';
import { vegetableById, vegetables } from '../../../handbook/vegetables.ts';
import { capital } from '../../../measures/capital.ts';
import { dayParts } from '../../../measures/days.ts';
import { formatQuantity } from '../../../measures/quantity.ts';
import { isPermanent } from '../../../practices/bed-timeline.ts';
import { coverName } from '../../../practices/covers.ts';
import { bedsPath, compostPath, gardenPath } from '../../addresses/addresses.ts';
import type { Field } from '../../fields/field.ts';
import { COVER_OPTIONS, CROP_OPTIONS } from '../../fields/options.ts';
import type { About, EditKind, RowOf } from './kind.ts';

const CAME: Field = { name: 'on', label: 'The day it came, or was ordered', as: 'day' };
const ORDERED = 'It is ordered, and has not come yet';

/** Compost got from elsewhere. */
export const compostBoughtKind: EditKind<'compostBought'> = {
  of: 'compostBought',
  list: 'compost-bought',
  word: 'load of compost from elsewhere',
  docs: 'topdressing',
  here: 'compost',
  note: 'It counts for the beds once beans have grown well in it: bought compost may carry weedkiller.',
  titleOf: ({ litres, on }, { place: { units } }) =>
    `${formatQuantity({ value: litres, unit: 'L' }, units)} of compost from elsewhere, ${fullDay(on, units)}`,
  fields: () => [
    CAME,
    { name: 'litres', label: 'How much', as: 'volume', example: 500 },
    { name: 'ordered', label: ORDERED, as: 'check', unticked: 'absent' },
    { name: 'tested', label: 'Beans were seen to grow well in it on', as: 'day', past: true },
  ],
  rowIn(form, about) {
    const row = form.row(this.fields(about), about.row);
    const isToCome = typeof row.on === 'string' && row.on > about.view.plan.today;
    if (isToCome && row.ordered !== true)
      form.refuse(CAME, 'That day is still to come.', `Give a day up to today, or tick “${ORDERED}”.`);
    return row;
  },
  back: ({ id }) => compostPath(id),
};

/** Covers against frost. */
export const gearKind: EditKind<'gear'> = {
  of: 'gear',
  list: 'gear',
  word: 'cover against frost',
  docs: 'frost-watch',
  here: 'household',
  titleOf: ({ what }) => capital(gearName(what)),
  fields: ({ view }) => [
    {
      name: 'what',
      label: 'What it is',
      as: 'choice',
      open: true,
      options: frostCovers.map(({ kind, name }) => ({ value: kind, words: capital(name) })),
      hint: 'How many degrees it is counted on for goes by it.',
    },
    {
      name: 'areaM2',
      label: 'How much of it',
      as: 'area',
      example: 12,
      hint: `All of one kind together. A bed takes its own size and ${view.garden.place.units === 'us' ? '1 ft (0.3 m)' : '0.3 m (1 ft)'} more on every side.`,
    },
  ],
  back: ({ id }) => `${gardenPath(id)}#shed`,
};

function gearName(what: RowOf<'gear'>['what']): string {
  return frostCovers.find(({ kind }) => kind === what)?.name ?? what;
}

const PACKED: Field = {
  name: 'packed',
  label: 'The year it was packed for',
  as: 'whole',
  example: 2026,
  hint: 'Old seed is tried on wet paper before it is sown.',
};

/** Seed in the drawer. */
export const seedKind: EditKind<'seeds'> = {
  of: 'seeds',
  list: 'seeds',
  word: 'packet of seed',
  docs: 'cover-cropping',
  here: 'household',
  titleOf: ({ crop, cover, packed }) =>
    `${crop === undefined ? capital(coverName(cover ?? '')) : vegetableById(crop).name} seed of ${packed}`,
  fields: (about) => [
    plantField(about),
    PACKED,
    {
      name: 'grams',
      label: 'How much it holds',
      as: 'grams',
      example: 320,
      hint: 'What is still to buy is reckoned from it. Leave both empty where you do not know.',
    },
    { name: 'on', label: 'The day it held so much', as: 'day', past: true, hint: 'What was sown since is taken off.' },
  ],
  mends: {
    '': 'Choose what it is seed of.',
    grams: 'Give how much it holds and the day it held so much, or leave both empty.',
  },
  fieldOf: (key) => (key === 'crop' || key === 'cover' ? 'plant' : key),
  rowIn(form, about) {
    const { crop: _crop, cover: _cover, ...old } = { ...about.row };
    const { plant, ...row } = form.row(this.fields(about), old);
    // A packet for the coming season is sold the autumn before.
    const latest = dayParts(about.view.plan.today).year + 1;
    if (typeof row.packed === 'number' && row.packed > latest)
      form.refuse(PACKED, `${row.packed} is still to come.`, `Give the year that stands on it, up to ${latest}.`);
    const [kind = 'crop', id] = typeof plant === 'string' ? plant.split(':') : [];
    return { ...row, ...(id === undefined ? {} : { [kind]: id }) };
  },
  back: ({ id }) => `${gardenPath(id)}#shed`,
};

function plantField({ row }: About<RowOf<'seeds'>>): Field {
  const told = row?.crop === undefined ? row?.cover && `cover:${row.cover}` : `crop:${row.crop}`;
  return {
    name: 'plant',
    label: 'What it is seed of',
    as: 'choice',
    required: true,
    ...(told === undefined ? {} : { value: told }),
    options: [
      ...COVER_OPTIONS.map((option) => ({ ...option, value: `cover:${option.value}` })),
      ...CROP_OPTIONS.map((option) => ({ ...option, value: `crop:${option.value}` })),
    ],
  };
}

const LASTING: ReadonlySet<string> = new Set(vegetables.filter(isPermanent).map(({ id }) => id));

/** A crop wanted in seasons to come. */
export const wishKind: EditKind<'wishes'> = {
  of: 'wishes',
  list: 'wishes',
  word: 'wish',
  docs: 'rotation-plan',
  here: 'beds',
  note: 'A plan for the beds is proposed from wishes. Nothing that is planned already moves.',
  titleOf: ({ crop, year }) =>
    `A wish for ${vegetableById(crop).name.toLowerCase()}${year === undefined ? '' : ` in ${year}`}`,
  fields: () => [
    { name: 'crop', label: 'The crop', as: 'choice', options: CROP_OPTIONS.filter(({ value }) => !LASTING.has(value)) },
    { name: 'beds', label: 'How many whole beds', as: 'whole', example: 1, hint: 'Either this or the next.' },
    { name: 'areaM2', label: 'Or how much of a bed', as: 'area', example: 3 },
    {
      name: 'year',
      label: 'The year its season begins in',
      as: 'whole',
      example: 2028,
      hint: 'Leave it empty where it is wanted in every season that is planned.',
    },
  ],
  mends: { beds: 'Give either a number of whole beds or how much of a bed: one of the two.' },
  fieldOf: (key) => (key === '' ? 'beds' : key),
  back: ({ id }) => bedsPath(id),
};
