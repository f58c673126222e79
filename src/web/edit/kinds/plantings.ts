/**
 * Crops in beds, past seasons too: they are the rotation's history.
 */

import { firstFree, slug } from '../../../garden/ids.ts';
import { vegetables } from '../../../handbook/vegetables.ts';
import { startWord } from '../../../practices/planting/planting-in-bed.ts';
import type { EditForm } from '../../fields/edit-form.ts';
import type { AnyField, Field } from '../../fields/field.ts';
import { CROP_OPTIONS } from '../../fields/options.ts';
import type { About, RowOf } from './kind.ts';
import { bedField, happenedField, isPlanned, ofABed } from './of-a-bed.ts';

type Planting = RowOf<'plantings'>;

/** A crop in a bed. */
export const plantings = ofABed<'plantings'>({
  list: 'plantings',
  of: 'plantings',
  word: 'crop',
  heading: 'Crops, past seasons too',
  docs: 'planting',
  note: 'Crops of past seasons count too: they are what the rotation goes by.',
  wordsOf: ({ crop, setOut, planned = [] }) => {
    const how = startWord(crop, setOut === undefined ? 'sow' : 'set-out');
    const isPlan = planned.includes(setOut === undefined ? 'sow' : 'setOut');
    return `${cropName(crop)}, ${isPlan ? 'to be ' : ''}${how}`;
  },
  dayOf: ({ sow, setOut }) => sow ?? setOut ?? '',
  fields: (about) => [
    bedField(about.view.garden),
    { name: 'crop', label: 'Crop', as: 'choice', options: CROP_OPTIONS },
    howField(about.row),
    dayField(about.row),
    startField(about.row),
    {
      name: 'meant',
      label: 'The day it was meant to go in',
      hint: 'Only where it went in on another: its planned last harvest moves with it.',
      as: 'day',
    },
    { name: 'indoors', label: 'The day its plants were sown under a roof', as: 'day', past: true },
    {
      name: 'lastHarvest',
      label: 'The day of its last harvest',
      hint: 'Left empty it is worked out, from the days the crop takes and the freeze.',
      as: 'day',
    },
    endField(about.row),
    {
      name: 'areaM2',
      label: 'Its share of the bed',
      hint: 'Left empty it has the whole bed. Crops side by side each want their share.',
      as: 'area',
      example: 1.4,
    },
    ...(about.row === undefined ? SOWN_AGAIN : []),
  ],
  rowIn,
  mends: { '': 'Choose how it goes in.', lastHarvest: 'Give a day that is not before the crop goes in.' },
  fieldOf: (key) => FIELD_OF[key] ?? key,
});

const FIELD_OF: Readonly<Record<string, string>> = {
  sow: 'day',
  setOut: 'day',
  planned: 'happened',
  again: 'again.everyDays',
};

/** Only asked of something new: each sowing is a planting of its own from then on. */
const SOWN_AGAIN: readonly AnyField[] = [
  {
    name: 'again.everyDays',
    label: 'Sown again: every so many days',
    hint: 'For a crop that goes in again and again, such as lettuce every 14 days. Left empty it goes in once.',
    as: 'whole',
    required: false,
    example: 14,
  },
  { name: 'again.times', label: 'Times it goes in again after the first', as: 'whole', required: false, example: 3 },
];

function cropName(id: string): string {
  return vegetables.find((crop) => crop.id === id)?.name ?? id;
}

function howField(row: Planting | undefined): Field {
  const value = row === undefined ? undefined : row.setOut === undefined ? 'sow' : 'setOut';
  const options = [
    { value: 'sow', words: 'sown in the bed; potatoes, garlic and sets are planted so' },
    { value: 'setOut', words: 'as plants, set out' },
  ];
  return { name: 'how', label: 'How it goes in', as: 'choice', open: true, required: true, options, value };
}

function dayField(row: Planting | undefined): Field {
  return {
    name: 'day',
    label: 'The day it goes in, or went in',
    as: 'day',
    required: true,
    value: row?.sow ?? row?.setOut,
  };
}

function startField(row: Planting | undefined): Field {
  const key = row?.setOut === undefined ? 'sow' : 'setOut';
  return happenedField({ name: 'happened', label: 'Is it in?', key, row, has: row !== undefined });
}

function endField(row: Planting | undefined): Field {
  const has = row?.lastHarvest !== undefined;
  return happenedField({ name: 'harvested', label: 'Is that last harvest in?', key: 'lastHarvest', row, has });
}

function rowIn(form: EditForm, about: About<Planting>): object {
  const { row: old, view, file } = about;
  const { today } = view.plan;
  const asked = plantings.fields(about).filter(({ name }) => !['happened', 'harvested'].includes(name));
  const { how, day, sow: _sow, setOut: _setOut, ...said } = form.row(asked, old);
  const start = how === 'setOut' ? 'setOut' : 'sow';
  const plans = [
    ...(isPlanned(form, startField(old), { day, today }) ? [start] : []),
    ...(isPlanned(form, endField(old), { day: said.lastHarvest, today }) ? ['lastHarvest'] : []),
  ];
  const taken = new Set(file.plantings.flatMap(({ id }) => id ?? []));
  const named = said.again === undefined ? {} : { id: firstFree(slug(`${said.bed} ${said.crop} ${day}`), taken) };
  return { ...said, ...named, ...(day === undefined ? {} : { [start]: day }), planned: plans };
}
