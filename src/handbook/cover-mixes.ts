/**
 * Covers sown together, and the rates that rise as winter rye is sown late.
 *
 * Rates are published in lb/ac and turned into g/m² here (1 lb/ac = 0.11209 g/m²); where a range is published its
 * middle is taken.
 */
import type { CoverMix, LateSowingRate } from './shapes/cover.ts';

/** Every mix of covers. */
export const coverMixes: readonly CoverMix[] = [
  {
    // 70 lb/ac of rye with 20–25 of vetch.
    id: 'rye-vetch',
    name: 'Winter rye with hairy vetch',
    parts: [
      { coverId: 'cereal_rye', gPerM2: 7.8 },
      { coverId: 'hairy_vetch', gPerM2: 2.5 },
    ],
    sources: ['cover:S4b'],
    marks: {},
  },
  {
    // 80 lb/ac of oats with 40 of vetch.
    id: 'oats-vetch',
    name: 'Oats with hairy vetch',
    parts: [
      { coverId: 'oats', gPerM2: 9 },
      { coverId: 'hairy_vetch', gPerM2: 4.5 },
    ],
    sources: ['cover:S4c'],
    marks: {},
  },
  {
    // 60 lb/ac of rye sown in spring as a nurse that never heads, with 15 of clover; the middle of April at Geneva, whose
    // median last freeze is 28 April.
    id: 'rye-red-clover',
    name: 'Red clover under a rye nurse',
    springSow: { fromWeeks: -4, toWeeks: 0 },
    parts: [
      { coverId: 'cereal_rye', gPerM2: 6.7 },
      { coverId: 'red_clover', gPerM2: 1.7 },
    ],
    sources: ['cover:S4b'],
    marks: { springSow: 'derived' },
  },
  {
    // Each part a third below its rate alone.
    id: 'oats-field-pea',
    name: 'Oats with field pea',
    parts: [
      { coverId: 'oats', gPerM2: 9.3 },
      { coverId: 'field_pea', gPerM2: 7.1 },
    ],
    sources: ['cover:S24', 'cover:S4c'],
    marks: { parts: 'derived' },
  },
  {
    // 5 lb per 1000 sq ft (24.4 g/m²) in all, in the shares 25, 60 and 15 %.
    id: 'oats-field-pea-vetch',
    name: 'Oats with field pea and hairy vetch',
    parts: [
      { coverId: 'oats', gPerM2: 6.1 },
      { coverId: 'field_pea', gPerM2: 14.6 },
      { coverId: 'hairy_vetch', gPerM2: 3.7 },
    ],
    sources: ['cover:S6', 'cover:S4c'],
    marks: { parts: 'derived' },
  },
  {
    // 20–25 lb/ac in all, two parts of ryegrass to one of clover by weight.
    id: 'ryegrass-red-clover',
    name: 'Annual ryegrass with red clover',
    parts: [
      { coverId: 'annual_ryegrass', gPerM2: 1.7 },
      { coverId: 'red_clover', gPerM2: 0.8 },
    ],
    sources: ['cover:S4d'],
    marks: {},
  },
];

/** The mixes by id. */
export const coverMixById: ReadonlyMap<string, CoverMix> = new Map(coverMixes.map((mix) => [mix.id, mix]));

/**
 * Rates for late sowings. Rye: broadcast 85, 140, 200 and 250 lb/ac for 15 and 22 September, 1 and 15 October in New
 * York, with the days counted to the median first freeze of Geneva, 19 October. The last step is for spring growth
 * only: it covers little before winter.
 */
export const lateSowingRates: readonly LateSowingRate[] = [
  {
    coverId: 'cereal_rye',
    steps: [
      { weeksBeforeFreeze: 4.9, gPerM2: 9.5 },
      { weeksBeforeFreeze: 3.9, gPerM2: 15.7 },
      { weeksBeforeFreeze: 2.6, gPerM2: 22.4 },
      { weeksBeforeFreeze: 0.6, gPerM2: 28 },
    ],
    sources: ['cover:S4b', 'climate:NCEI-8110'],
  },
];
