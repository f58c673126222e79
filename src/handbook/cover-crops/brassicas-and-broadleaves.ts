/** Covers of the cabbage family, buckwheat and phacelia. */
import { overWinter, whenEnded, whenStarted } from '../shapes/cautions.ts';
import type { CoverCrop } from '../shapes/cover.ts';
import { fromMemory } from '../shapes/row.ts';

/** 42 % carbon over the nitrogen classes published for brassicas and grasses: before flowering and in flower. */
const ratios = { carbonToNitrogenGreen: 17, carbonToNitrogenMature: 21 } as const;
const ratioMarks = { carbonToNitrogenGreen: 'derived', carbonToNitrogenMature: 'derived' } as const;
const ratiosReadIn = { carbonToNitrogenGreen: 'cover:S9', carbonToNitrogenMature: 'cover:S9' } as const;

/** Radish and mustard. */
export const coverBrassicas: readonly CoverCrop[] = [
  {
    ...ratios,
    id: 'oilseed_radish',
    name: 'Oilseed radish',
    scientificName: 'Raphanus sativus',
    form: 'brassica',
    rotationGroup: 'cabbage',
    soilMinC: 7.2,
    frostTender: false,
    autumnSow: { earliestWeeks: 10, latestWeeks: 7, fate: 'winter-killed' },
    winterKillC: -8.3,
    broadcastGPerM2: { low: 1.3, high: 1.7 },
    usualGPerM2: 1.5,
    depthCm: { low: 0.6, high: 1.3 },
    regrows: 'partly',
    cutStage: 'leafy; best left to winter',
    waitDays: { smallSeed: 21, transplant: 14 },
    cautions: [
      ...whenStarted(
        'It counts as a cabbage: not before or after one, and never where clubroot is known.',
        'Sown in spring it only bolts.',
      ),
      ...overWinter(
        'Once confirmed dead over winter it needs no wait; small late plants may live through a mild winter.',
        'The rotting roots smell.',
      ),
    ],
    sources: ['cover:S4g', 'cover:S16', 'cover:S19', 'cover:S9', 'cover:S20', 'cover:S21', 'cover:S28', 'cover:S46'],
    marks: {
      ...fromMemory('depthCm', 'regrows'),
      autumnSow: 'derived',
      waitDays: 'house default',
      ...ratioMarks,
    },
    readIn: { soilMinC: 'cover:S46', winterKillC: 'cover:S16', broadcastGPerM2: 'cover:S28', ...ratiosReadIn },
  },
  {
    ...ratios,
    id: 'mustard',
    name: 'Mustard',
    scientificName: 'Sinapis alba, Brassica juncea',
    form: 'brassica',
    rotationGroup: 'cabbage',
    soilMinC: 4.4,
    frostTender: false,
    springSow: { fromWeeks: -4, toWeeks: 0 },
    autumnSow: { earliestWeeks: 11, latestWeeks: 7, fate: 'winter-killed' },
    winterKillC: -8.3,
    broadcastGPerM2: { low: 1.1, high: 1.7 },
    usualGPerM2: 1.4,
    depthCm: { low: 1.3, high: 1.3 },
    regrows: 'partly',
    cutStage: 'at the first flowers at the latest',
    waitDays: { smallSeed: 21, transplant: 14 },
    cautions: [
      ...whenStarted('It counts as a cabbage: not before or after one, and never where clubroot is known.'),
      ...overWinter('Young late mustard may live through the winter: look before counting on a free bed.'),
      ...whenEnded(
        'Never let it seed: it comes up for years.',
        'No cucumbers, squash or melons straight after it: they sprout poorly.',
      ),
    ],
    sources: ['cover:S4e', 'cover:S4g', 'cover:S4h', 'cover:S9', 'cover:S13', 'cover:S20', 'cover:S21', 'cover:S28'],
    marks: {
      soilMinC: 'from memory',
      springSow: 'derived',
      autumnSow: 'derived',
      waitDays: 'house default',
      ...ratioMarks,
    },
    readIn: { springSow: 'cover:S4h', winterKillC: 'cover:S20', ...ratiosReadIn },
  },
];

/** Buckwheat and phacelia. */
export const coverBroadleaves: readonly CoverCrop[] = [
  {
    ...ratios,
    id: 'buckwheat',
    name: 'Buckwheat',
    scientificName: 'Fagopyrum esculentum',
    form: 'broadleaf',
    rotationGroup: 'buckwheat',
    soilMinC: 10,
    frostTender: true,
    warmDaysNeeded: 40,
    warmDaysPreferred: 65,
    winterKillC: -1,
    broadcastGPerM2: { low: 7.8, high: 7.8 },
    usualGPerM2: 7.8,
    depthCm: { low: 1.3, high: 2.5 },
    regrows: 'yes',
    cutStage: 'at the first flowers, never more than ten days after them',
    nitrogenKgPerHa: { low: 0, high: 0 },
    waitDays: { smallSeed: 21, transplant: 7 },
    cautions: [
      ...whenStarted('It dislikes wet or hard ground; a freeze ends it.'),
      ...whenEnded('Ten days after the first flowers its seed is viable and it comes up in the next crop.'),
    ],
    sources: ['cover:S4a', 'cover:S5', 'cover:S9', 'cover:S15', 'cover:S23'],
    marks: {
      ...fromMemory('soilMinC', 'winterKillC', 'regrows'),
      warmDaysNeeded: 'derived',
      nitrogenKgPerHa: 'house default',
      waitDays: 'house default',
      ...ratioMarks,
    },
    readIn: ratiosReadIn,
  },
  {
    ...ratios,
    id: 'phacelia',
    name: 'Phacelia',
    scientificName: 'Phacelia tanacetifolia',
    form: 'broadleaf',
    rotationGroup: 'borage',
    soilMinC: 3,
    frostTender: false,
    springSow: { fromWeeks: -2, toWeeks: 2 },
    autumnSow: { earliestWeeks: 8, latestWeeks: 6, fate: 'winter-killed' },
    winterKillC: -8,
    broadcastGPerM2: { low: 0.8, high: 1.3 },
    usualGPerM2: 1.1,
    depthCm: { low: 0.3, high: 1.3 },
    regrows: 'no',
    cutStage: 'at the first flowers, before it seeds',
    nitrogenKgPerHa: { low: 0, high: 0 },
    waitDays: { smallSeed: 21, transplant: 14 },
    cautions: [
      ...whenStarted('The seed sprouts in the dark only, so cover it.'),
      ...whenEnded('The hairs irritate some skins: wear sleeves and gloves.', 'It seeds itself freely.'),
    ],
    sources: ['cover:S14', 'cover:S9', 'cover:S54'],
    marks: {
      ...fromMemory('soilMinC', 'autumnSow', 'winterKillC', 'broadcastGPerM2', 'depthCm', 'regrows'),
      springSow: 'house default',
      nitrogenKgPerHa: 'house default',
      waitDays: 'house default',
      ...ratioMarks,
    },
    readIn: ratiosReadIn,
  },
];
