/**
 * Heat a cover needs between its sowing and the cold that ends its growth, to have been worth its seed.
 *
 * One sum is published: the cabbage kin. The others are published last sowing dates turned into heat once: the units to
 * be expected from that date to the median freeze at the place the date is for, from its normals of 1981–2010. Where a
 * rule is in weeks before the freeze it is counted at the place of its author. A kind without a row has no figure to go
 * by: cowpea, phacelia and white clover.
 */
import type { HeatNeed } from './shapes/cover.ts';

const GENEVA = { place: 'Geneva, New York', station: 'USC00303184' } as const;
const CLEMSON = { place: 'Clemson, South Carolina', station: 'USC00381770' } as const;

/** Legumes six weeks before the first freeze, by a rule for all of them (cover:S19). */
const legumesAtClemson = {
  count: { baseC: 4.4, method: 'mean-over-base' },
  freezeF: 32,
  units: 522,
  turned: { ...CLEMSON, lastSowing: '09-22', freeze: '11-03' },
  provenance: 'derived',
  sources: ['cover:S19', 'climate:NCEI-8110'],
} as const;

/** Published; counted to the first freeze. */
const cabbageKin = {
  count: { baseC: 0, method: 'mean-over-base' },
  freezeF: 32,
  units: 1111,
  provenance: 'published',
  sources: ['cover:S4g'],
} as const;

/** Every need of heat that is known. */
export const heatNeeds: readonly HeatNeed[] = [
  { coverId: 'oilseed_radish', ...cabbageKin },
  { coverId: 'mustard', ...cabbageKin },
  {
    // Until 10 October for winter cover.
    coverId: 'cereal_rye',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 24,
    units: 160,
    turned: { ...GENEVA, lastSowing: '10-10', freeze: '11-17' },
    provenance: 'derived',
    sources: ['cover:S4b', 'climate:NCEI-8110'],
  },
  {
    // "Early October".
    coverId: 'winter_wheat',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 24,
    units: 198,
    turned: { ...GENEVA, lastSowing: '10-05', freeze: '11-17' },
    provenance: 'derived',
    sources: ['cover:S4i', 'climate:NCEI-8110'],
  },
  {
    // August and September in Wisconsin.
    coverId: 'triticale',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 24,
    units: 160,
    turned: { place: 'Madison, Wisconsin', station: 'USW00014837', lastSowing: '09-30', freeze: '10-27' },
    provenance: 'derived',
    sources: ['cover:S24', 'climate:NCEI-8110'],
  },
  {
    // Thirty days before the first freeze of Maine.
    coverId: 'oats',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 32,
    units: 292,
    turned: { place: 'Bangor, Maine', station: 'USW00014606', lastSowing: '09-04', freeze: '10-04' },
    provenance: 'derived',
    sources: ['cover:S6', 'climate:NCEI-8110'],
  },
  {
    // Four weeks before the freeze, a rule for all that are no legumes.
    coverId: 'barley',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 32,
    units: 311,
    turned: { ...CLEMSON, lastSowing: '10-06', freeze: '11-03' },
    provenance: 'derived',
    sources: ['cover:S19', 'climate:NCEI-8110'],
  },
  {
    // By late August in Vermont.
    coverId: 'annual_ryegrass',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 32,
    units: 400,
    turned: { place: 'Burlington, Vermont', station: 'USW00014742', lastSowing: '08-31', freeze: '10-08' },
    provenance: 'derived',
    sources: ['cover:S47', 'climate:NCEI-8110'],
  },
  {
    // August to early September in Iowa: the latest of the dates published for a place (New York has late August).
    coverId: 'hairy_vetch',
    count: { baseC: 4.4, method: 'mean-over-base' },
    freezeF: 28,
    units: 428,
    turned: { place: 'Ames, Iowa', station: 'USC00130200', lastSowing: '09-10', freeze: '10-20' },
    provenance: 'derived',
    sources: ['cover:S25', 'climate:NCEI-8110'],
  },
  { coverId: 'field_pea', ...legumesAtClemson },
  { coverId: 'austrian_winter_pea', ...legumesAtClemson },
  { coverId: 'common_vetch', ...legumesAtClemson },
  { coverId: 'fava_bell_bean', ...legumesAtClemson },
  { coverId: 'crimson_clover', ...legumesAtClemson },
  { coverId: 'red_clover', ...legumesAtClemson },
  { coverId: 'berseem_clover', ...legumesAtClemson },
  {
    // The latest useful sowing, 15 August; counted over the base its flowering is counted over.
    coverId: 'buckwheat',
    count: { baseC: 7, method: 'mean-over-base' },
    freezeF: 32,
    units: 572,
    turned: { ...GENEVA, lastSowing: '08-15', freeze: '10-19' },
    provenance: 'derived',
    sources: ['cover:S4a', 'climate:NCEI-8110'],
  },
  {
    // Until the middle of August.
    coverId: 'sorghum_sudangrass',
    count: { baseC: 10, method: 'mean-over-base' },
    freezeF: 32,
    units: 396,
    turned: { ...GENEVA, lastSowing: '08-15', freeze: '10-19' },
    provenance: 'derived',
    sources: ['cover:S4f', 'climate:NCEI-8110'],
  },
];

const needs: ReadonlyMap<string, HeatNeed> = new Map(heatNeeds.map((need) => [need.coverId, need]));

/** The need of a kind; nothing where no figure is known. */
export function heatNeedOf(coverId: string): HeatNeed | undefined {
  return needs.get(coverId);
}
