/**
 * What was done to a bed and found of it, a line each.
 */

import { fullDay } from '../../../digest/words.ts';
import type { Garden } from '../../../garden/garden.ts';
import { MULCHES } from '../../../garden/stand-file.ts';
import { feedstocks } from '../../../handbook/feedstocks.ts';
import { fertilisers } from '../../../handbook/fertilisers.ts';
import { soilTextureById } from '../../../handbook/soil-textures.ts';
import { vegetables } from '../../../handbook/vegetables.ts';
import { capital } from '../../../measures/capital.ts';
import { formatQuantity } from '../../../measures/quantity.ts';
import type { Field, Option } from '../../fields/field.ts';
import { bedName, CROP_OPTIONS, SOIL_OPTIONS } from '../../fields/options.ts';
import { bedField, ofABed } from './of-a-bed.ts';

const ON: Field = { name: 'on', label: 'The day', as: 'day', past: true };

/** Mulch meant for a bed. */
export const mulches = ofABed<'mulches'>({
  list: 'mulches',
  of: 'mulches',
  word: 'mulch',
  heading: 'Mulches planned',
  docs: 'mulching',
  wordsOf: ({ mulch }) => (mulch === 'leaves' ? 'Leaves' : 'Straw'),
  dayOf: ({ from }) => from,
  mends: { to: 'Give a day that is not before the one it lies from.' },
  fields: ({ view }) => [
    bedField(view.garden),
    { name: 'mulch', label: 'With what', as: 'choice', options: MULCHES.map((value) => ({ value, words: value })) },
    { name: 'from', label: 'From', as: 'day' },
    { name: 'to', label: 'To, the day after it', hint: 'Left empty where nothing else is planned there.', as: 'day' },
  ],
});

/** A soil sample. */
export const soilTests = ofABed<'soilTests'>({
  list: 'soil-tests',
  of: 'soilTests',
  word: 'soil test',
  heading: 'Soil tests',
  docs: 'fertility',
  wordsOf: ({ bed, organicMatterPercent, phosphorusPpm, ph }) => {
    const found = [
      organicMatterPercent === undefined ? [] : `${organicMatterPercent} % organic matter`,
      phosphorusPpm === undefined ? [] : `${phosphorusPpm} ppm phosphorus`,
      ph === undefined ? [] : `pH ${ph}`,
    ].flat();
    return `Soil test${bed === undefined ? ' of the whole garden' : ''}: ${found.join(', ') || 'no figures yet'}`;
  },
  dayOf: ({ on }) => on,
  isOf: ({ bed }, bedId) => bed === undefined || bed === bedId,
  fields: ({ view }) => [
    { ...bedField(view.garden), label: 'Bed', hint: 'Left open it is of the whole garden.' },
    { ...ON, label: 'The day the sample was taken' },
    { name: 'organicMatterPercent', label: 'Organic matter, percent', as: 'number', example: 4.5 },
    { name: 'phosphorusPpm', label: 'Phosphorus, parts per million', as: 'number', example: 18 },
    { name: 'ph', label: 'pH', as: 'number', example: 6.5 },
  ],
});

/** A handful of soil squeezed. */
export const soilSqueezes = ofABed<'soilSqueezes'>({
  list: 'soil-squeezes',
  of: 'soilSqueezes',
  word: 'squeeze test',
  heading: 'Squeeze tests of its soil',
  docs: 'soil-readiness',
  wordsOf: ({ soilTexture, answer }) => `${soilName(soilTexture)} squeezed: it ${answer}`,
  dayOf: ({ on }) => on,
  isOf: ({ soilTexture }, bedId, { beds, place }) =>
    (beds.find(({ id }) => id === bedId)?.soilTexture ?? place.soilTexture) === soilTexture,
  fields: () => [
    ON,
    { name: 'soilTexture', label: 'Which soil', as: 'choice', options: SOIL_OPTIONS },
    {
      name: 'answer',
      label: 'What the handful did',
      as: 'choice',
      open: true,
      required: true,
      options: [
        { value: 'crumbles', words: 'it crumbled' },
        { value: 'smears', words: 'it smeared' },
      ],
    },
  ],
});

function soilName(id: string): string {
  return soilTextureById.get(id)?.name ?? id;
}

/** A disease found. */
export const diseases = ofABed<'diseases'>({
  list: 'diseases',
  of: 'diseases',
  word: 'disease',
  heading: 'Diseases found',
  docs: 'disease',
  wordsOf: ({ disease, crop }) => `${capital(disease)} on ${cropName(crop)}`,
  dayOf: ({ found }) => found,
  fields: ({ view }) => [
    bedField(view.garden),
    { name: 'crop', label: 'On which crop', as: 'choice', options: CROP_OPTIONS },
    { name: 'disease', label: 'What it is called', as: 'text', example: 'clubroot' },
    { name: 'found', label: 'The day it was found', as: 'day', past: true },
  ],
});

function cropName(id: string): string {
  return (vegetables.find((crop) => crop.id === id)?.name ?? id).toLowerCase();
}

/** Compost spread, or a raw manure laid. */
export const topdressed = ofABed<'topdressed'>({
  list: 'topdressed',
  of: 'topdressed',
  word: 'topdressing',
  heading: 'Compost spread',
  docs: 'topdressing',
  wordsOf: ({ litres, material }, { place: { units } }) => {
    const what = feedstocks.find(({ id }) => id === material)?.name ?? 'Compost';
    return `${what}, ${formatQuantity({ value: litres, unit: 'L' }, units)}`;
  },
  dayOf: ({ on }) => on,
  fields: ({ view }) => [
    bedField(view.garden),
    ON,
    { name: 'litres', label: 'How much', as: 'volume', example: 60 },
    ...pilesField(view.garden),
    {
      name: 'material',
      label: 'Raw, in place of compost',
      hint: 'Where it was no compost but a manure or another material, laid as it is.',
      as: 'choice',
      options: RAW,
    },
  ],
});

const RAW: readonly Option[] = feedstocks
  .map(({ id, name, manure }) => ({ value: id, words: name, group: manure ? 'Manures' : 'Other materials' }))
  .sort((a, b) => (`${a.group} ${a.words}` < `${b.group} ${b.words}` ? -1 : 1));

function pilesField({ piles, bins, place: { units } }: Garden): Field[] {
  const options = piles.map(({ id, binId, built }) => {
    const bin = bins.find((each) => each.id === binId)?.name ?? binId;
    return { value: id, words: `${bin}, built ${fullDay(built.day, units)}` };
  });
  if (options.length === 0) return [];
  return [{ name: 'piles', label: 'The piles it came from', as: 'many', options }];
}

/** A fertiliser strewn. */
export const fed = ofABed<'fed'>({
  list: 'fed',
  of: 'fed',
  word: 'feeding',
  heading: 'Fertilisers strewn',
  docs: 'fertility',
  wordsOf: ({ fertiliser, grams }, { place: { units } }) => {
    const what = fertilisers.find(({ id }) => id === fertiliser)?.name ?? fertiliser;
    return `${capital(what)}, ${formatQuantity({ value: grams, unit: 'g' }, units)}`;
  },
  dayOf: ({ on }) => on,
  fields: ({ view }) => [
    bedField(view.garden),
    ON,
    {
      name: 'fertiliser',
      label: 'Which',
      as: 'choice',
      options: fertilisers.map(({ id, name }) => ({ value: id, words: name })),
    },
    { name: 'grams', label: 'How much', as: 'grams', example: 250 },
    {
      name: 'planting',
      label: 'For which crop',
      hint: 'Left open it was for the whole bed.',
      as: 'choice',
      options: plantingOptions(view.garden),
    },
  ],
});

/** Crops in beds, the newest first, under their beds. */
function plantingOptions(garden: Garden): Option[] {
  return [...garden.plantings]
    .sort((a, b) => (a.start.day > b.start.day ? -1 : 1))
    .map(({ id, bedId, cropId, start }) => {
      const words = `${cropName(cropId)}, ${fullDay(start.day, garden.place.units)}`;
      return { value: id, words, group: bedName(garden, bedId) };
    });
}
