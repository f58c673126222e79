/**
 * How little of the soil a sowing or a planting opens: a drill, a hole for each seed or plant, a fork only where roots go
 * deep. Nothing is dug over or turned. All of it common practice.
 */
import { isPermanent } from '../bed-timeline.ts';
import { isSeed, type PlantingInBed } from './planting-in-bed.ts';

/** Kinds whose seed is large enough to be set one by one. */
const SET_SINGLY: ReadonlySet<string> = new Set([
  'snap-bean',
  'pole-bean',
  'dry-bean',
  'lima-bean',
  'edamame',
  'fava-bean',
  'pea',
  'sweet-corn',
]);
/** Kinds whose harvest is a long root, which packed soil forks and stunts. */
const LONG_ROOTS: ReadonlySet<string> = new Set(['carrot', 'parsnip']);
/** What is set with its tip showing, and not covered. */
const SHALLOW_SETS: ReadonlySet<string> = new Set(['onion-sets', 'shallot']);

const DEEP_AS_THICK = 'two to three times its own thickness';

/** The steps that open and close the soil for what is sown, or planted as sets, tubers or crowns. */
export function soilForSowing(at: PlantingInBed): string[] {
  const { id, rotationGroup } = at.crop;
  if (!isSeed(at)) return [soilForSets(id)];
  const loosened = LONG_ROOTS.has(id)
    ? ['Where the soil is packed, push a fork in along the row and rock it until it cracks; lift and turn nothing.']
    : [];
  if (rotationGroup === 'cucurbit') {
    return [
      'Make a hole for each seed with a finger, or two or three side by side where one plant is wanted: ' +
        `${DEEP_AS_THICK} deep. Close it by hand and water. The soil between stays as it lies.`,
    ];
  }
  return SET_SINGLY.has(id)
    ? [
        `Make a hole for each seed with a finger or a dibber along the line, ${DEEP_AS_THICK} deep; close it by hand and ` +
          'water. The soil between stays as it lies.',
      ]
    : [
        ...loosened,
        'Draw a shallow drill along each line with a finger or the corner of a hoe, water it, sow, and cover the seed with ' +
          `fine soil ${DEEP_AS_THICK}. The soil between the drills stays as it lies.`,
      ];
}

function soilForSets(cropId: string): string {
  if (cropId === 'potato') {
    return (
      'Open a hole for each with a trowel, lay the tuber in with its eyes up, and close it by hand; dig no trench. Later lay ' +
      'straw or leaves against the stems as they grow: no tuber may see light.'
    );
  }
  return SHALLOW_SETS.has(cropId)
    ? 'Press a hole for each with a finger, set it root end down with its tip just showing, and firm it. No digging over.'
    : 'Open a hole for each with a trowel, set it the right way up, close it by hand and firm it. No digging over.';
}

/** The steps that open and close the soil for plants set out. */
export function soilForPlants({ crop }: PlantingInBed): string[] {
  if (isPermanent(crop)) {
    return ['Choose the place for years: open holes with a trowel, spread the roots, cover them and water in.'];
  }
  const spreads = crop.rotationGroup === 'cucurbit' || crop.id === 'sweet-potato';
  return [
    'On a dull day or towards evening: water the plants an hour before, open a hole for each with a trowel, as wide as its ' +
      'roots, set it, firm it and water in. The soil between stays as it lies.',
    ...(spreads ? ['Where mulch lies, part it only for the hole, and keep it off the stem.'] : []),
  ];
}
