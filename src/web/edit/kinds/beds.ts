/**
 * Beds.
 */
import type { UnitSystem } from '../../../measures/units.ts';
import { bedPath, bedsPath } from '../../addresses/addresses.ts';
import type { AnyField } from '../../fields/field.ts';
import { SOIL_OPTIONS } from '../../fields/options.ts';
import type { EditKind, RowOf } from './kind.ts';

type Bed = RowOf<'beds'>;

/** How the depth is asked for. */
export const DEPTH_OF_SOIL = 'Depth of its soil';

/** A bed. */
export const beds: EditKind<'beds'> = {
  list: 'beds',
  of: 'beds',
  word: 'bed',
  here: 'beds',
  docs: 'new-beds',
  titleOf: ({ name }) => name,
  fields: ({ row, view }) => [
    { name: 'name', label: 'Name', as: 'text', example: 'North bed' },
    ...bedSides(row, view.garden.place.units),
    {
      name: 'plannedFor',
      label: 'Still to be made: the day it is to be there',
      hint: 'Left empty for a bed that is there. A bed still to be made needs its depth.',
      as: 'day',
    },
    {
      name: 'filledOn',
      label: 'The day it was filled',
      hint: 'Of a bed that had still to be made.',
      as: 'day',
      past: true,
    },
    {
      name: 'pathsM2',
      label: 'Paths beside it that topsoil can be scooped from',
      hint: 'Of a bed still to be made; 0 for none. Left empty it is two paths along its sides.',
      as: 'area',
      example: 2,
    },
  ],
  mends: {
    depthM: 'Give the depth it is to have: a bed still to be made is reckoned by it.',
    filledOn: 'Give the day it was meant to be there as well, or leave this empty.',
    pathsM2: 'Give the day it is to be there as well, or leave this empty.',
  },
  back: (garden, row) => (row?.id === undefined ? bedsPath(garden.id) : bedPath(garden.id, row.id)),
  backWithout: ({ id }) => bedsPath(id),
};

/** The size of a bed and its kind, as they are asked when a garden is set up too. */
export function bedSize(row: Pick<Bed, 'raised'> | undefined, units: UnitSystem): AnyField[] {
  return [
    { name: 'lengthM', label: 'Length', as: 'length', example: 2.4 },
    {
      name: 'widthM',
      label: 'Width',
      hint: `${units === 'us' ? '4 ft, or 1.2 m,' : '1.2 m, or 4 ft,'} lets both sides reach the middle.`,
      as: 'length',
      example: 1.2,
    },
    {
      name: 'depthM',
      label: DEPTH_OF_SOIL,
      hint: 'Left empty where nobody measured it.',
      as: 'depth',
      example: 0.3,
    },
    { name: 'raised', label: 'It is a raised bed', as: 'check', value: row?.raised ?? true },
    { name: 'watered', label: 'A hose or a drip line waters it', as: 'check' },
  ];
}

/** What beds alike have alike. */
export function bedSides(row: Bed | undefined, units: UnitSystem): AnyField[] {
  return [
    ...bedSize(row, units),
    {
      name: 'soilTexture',
      label: 'Its soil, where it is not the garden’s',
      as: 'choice',
      options: SOIL_OPTIONS,
    },
    {
      name: 'topdressingMm',
      label: 'Its own yearly layer of compost',
      hint: 'Left empty it gets the layer of all beds.',
      as: 'depth',
      example: 25,
    },
  ];
}
