/**
 * Compost piles, with what went into them and their logs.
 */

import { FAILED_WORDS } from '../../../digest/record/seen-words.ts';
import { fullDay } from '../../../digest/words.ts';
import { MATURITY_FAILURES } from '../../../garden/pile-file.ts';
import { feedstocks } from '../../../handbook/feedstocks.ts';
import type { Feedstock } from '../../../handbook/shapes/feedstock.ts';
import { compostPath } from '../../addresses/addresses.ts';
import type { Field, FieldRows, Option } from '../../fields/field.ts';
import type { About, EditKind, RowOf } from './kind.ts';
import { FEELS, SMELLS } from './pile-look-words.ts';

type Row = RowOf<'piles'>;

/** A pile. */
export const pileKind: EditKind<'piles'> = {
  of: 'piles',
  list: 'piles',
  word: 'pile',
  docs: 'composting',
  here: 'compost',
  note: 'Turns, curing and the day its compost can be counted on are worked out from what is told here.',
  titleOf: ({ bin, built }, { bins, place }) =>
    `The pile in ${bins.find(({ id }) => id === bin)?.name ?? bin}, of ${fullDay(built, place.units)}`,
  fields: (about) => [...ofThePile(about), ingredients, readings(about), turns, looks, ...itsEnd],
  rowIn(form, about) {
    const isBuilt = builtField(about);
    const row = form.row(this.fields(about), about.row);
    const happened = row[isBuilt.name] === true;
    delete row[isBuilt.name];
    if (happened && typeof row.built === 'string' && row.built > about.view.plan.today)
      form.refuse(
        { name: 'built', label: BUILT },
        'That day is still to come.',
        `Give a day up to today, or leave “${isBuilt.label}” unticked.`,
      );
    return { ...row, planned: happened ? [] : ['built'] };
  },
  back: ({ id }) => compostPath(id),
};

const BUILT = 'The day';

function ofThePile(about: About<Row>): Field[] {
  return [
    {
      name: 'bin',
      label: 'The bin it is in',
      as: 'choice',
      options: about.file.bins.map(({ id = '', name }) => ({ value: id, words: name })),
    },
    builtField(about),
    {
      name: 'built',
      label: BUILT,
      as: 'day',
      hint: 'That it was built on, or is to be. A day that has come by itself builds nothing: tick the box, or mark its task done.',
    },
    {
      name: 'method',
      label: 'How it is kept',
      as: 'choice',
      open: true,
      options: [
        { value: 'hot', words: 'Made at once and turned: ready in a season' },
        { value: 'cold', words: 'Left alone: ready in one to two years' },
      ],
    },
  ];
}

/** Whether it is there already: what the file says by the list of its plans. */
function builtField({ row }: About<Row>): Field {
  return {
    name: 'isBuilt',
    label: 'It is built',
    as: 'check',
    value: row !== undefined && !row.planned?.includes('built'),
  };
}

const CLASS_WORDS: Readonly<Record<Feedstock['class'], string>> = {
  green: 'Greens',
  brown: 'Browns',
  other: 'Others',
};

const MATERIALS: readonly Option[] = feedstocks.map(({ id, name, class: kind }) => ({
  value: id,
  words: name,
  group: CLASS_WORDS[kind],
}));

const ingredients: FieldRows = {
  name: 'ingredients',
  label: 'What it is of',
  as: 'rows',
  one: 'something that went in',
  hint: 'Its mix, how it heats, what is left of it, and whether raw manure went in are reckoned from it.',
  fields: () => [
    { name: 'material', label: 'Material', as: 'choice', options: MATERIALS },
    { name: 'litres', label: 'How much, as it was piled', as: 'volume', example: 200 },
  ],
};

function readings({ row }: About<Row>): FieldRows {
  return {
    name: 'readings',
    label: 'Looks at it',
    as: 'rows',
    one: 'a look',
    ...(row === undefined ? {} : { value: row.readings }),
    hint: 'What a look finds says when it is turned next.',
    fields: () => [
      { name: 'on', label: 'The day', as: 'day', past: true },
      { name: 'at', label: 'The hour', as: 'time' },
      { name: 'tempC', label: 'In the middle', as: 'temp', example: 58 },
      { name: 'moisture', label: 'A squeezed handful is', as: 'choice', options: FEELS },
      { name: 'smell', label: 'It smells', as: 'choice', options: SMELLS },
      { name: 'pests', label: 'Flies, rats or mice are at it', as: 'check', unticked: 'absent' },
      { name: 'slumped', label: 'It has sunk together', as: 'check', unticked: 'absent' },
    ],
  };
}

const turns: FieldRows = {
  name: 'turns',
  label: 'Turns',
  as: 'rows',
  one: 'a turn',
  plain: true,
  hint: 'The next turn is counted from the last.',
  fields: () => [{ name: 'on', label: 'The day', as: 'day', past: true }],
};

const looks: FieldRows = {
  name: 'notReady',
  label: 'Looks that found its compost not ready',
  as: 'rows',
  one: 'such a look',
  fields: () => [
    { name: 'on', label: 'The day', as: 'day', past: true },
    {
      name: 'failed',
      label: 'What was amiss',
      as: 'many',
      options: MATURITY_FAILURES.map((value) => ({ value, words: FAILED_WORDS[value] })),
    },
  ],
};

const itsEnd: readonly Field[] = [
  {
    name: 'curingSince',
    label: 'Left to cure since',
    as: 'day',
    past: true,
    hint: 'It is turned no more; in three to four weeks it is looked at.',
  },
  {
    name: 'finished',
    label: 'Found ready on',
    as: 'day',
    past: true,
    hint: 'Its compost counts for the beds from then on.',
  },
  {
    name: 'finishedLitres',
    label: 'Compost it gave',
    as: 'volume',
    example: 300,
    hint: 'Once somebody measured it. Left empty, two fifths of what was built are counted.',
  },
];
