/**
 * What a full stand of a cover weighs dry, and what share of it is nitrogen by its stage.
 *
 * No yields were read. A legume's comes of the nitrogen given for a whole stand of it; those of the others are remembered.
 * All are wide, and a garden's own weighing beats them.
 */
import type { CoverYield, NitrogenClass } from './shapes/cover.ts';
import type { SourceId, Span } from './shapes/row.ts';

/** Nitrogen of dry tissue before flowering and in flower, percent. */
export const nitrogenClasses: readonly NitrogenClass[] = [
  {
    of: 'annual legume',
    green: { low: 3.5, high: 4 },
    inFlower: { low: 3, high: 3.5 },
    provenance: 'published',
    sources: ['cover:S9'],
  },
  {
    // 42 % carbon over 15 to 17 and 19, the ratios of legume hay.
    of: 'perennial legume',
    green: { low: 2.5, high: 2.8 },
    inFlower: { low: 2.2, high: 2.5 },
    provenance: 'derived',
    sources: ['cover:S11', 'cover:S9'],
  },
  {
    // 42 % carbon over 26 while leafy and 37 at flowering.
    of: 'rye',
    green: { low: 1.6, high: 1.6 },
    inFlower: { low: 1.1, high: 1.1 },
    provenance: 'derived',
    sources: ['cover:S11'],
  },
  {
    of: 'grass or broadleaf',
    green: { low: 2, high: 3 },
    inFlower: { low: 1.5, high: 2.5 },
    provenance: 'published',
    sources: ['cover:S9'],
  },
];

/** What the next crop finds of legumes sown in late summer and dead by spring, g/m². */
interface LateLegumeCredit {
  coverIds: readonly string[];
  gPerM2: Span;
  sources: readonly SourceId[];
}

/**
 * Wisconsin's credits after a short late-summer growth, in pounds an acre: field pea 20, berseem 40–60, crimson clover
 * 30–50 (cover:S24). Other peas, common vetch and fava go by field pea: house default.
 */
export const lateLegumeCredits: readonly LateLegumeCredit[] = [
  {
    coverIds: ['field_pea', 'austrian_winter_pea', 'common_vetch', 'fava_bell_bean'],
    gPerM2: { low: 2.2, high: 2.2 },
    sources: ['cover:S24'],
  },
  { coverIds: ['berseem_clover'], gPerM2: { low: 4.5, high: 6.7 }, sources: ['cover:S24'] },
  { coverIds: ['crimson_clover'], gPerM2: { low: 3.4, high: 5.6 }, sources: ['cover:S24'] },
];

/** Dry matter of a full stand of the kinds that fix no nitrogen, kg/m². */
export const coverYields: readonly CoverYield[] = [
  remembered('cereal_rye', 0.2, 0.6),
  remembered('winter_wheat', 0.2, 0.5),
  remembered('triticale', 0.2, 0.6),
  remembered('oats', 0.15, 0.4),
  remembered('barley', 0.15, 0.4),
  remembered('annual_ryegrass', 0.2, 0.5),
  remembered('sorghum_sudangrass', 0.4, 1),
  remembered('buckwheat', 0.2, 0.4),
  remembered('oilseed_radish', 0.2, 0.5),
  remembered('mustard', 0.2, 0.4),
  remembered('phacelia', 0.2, 0.4),
];

function remembered(coverId: string, low: number, high: number): CoverYield {
  return { coverId, dryKgPerM2: { low, high }, provenance: 'from memory', sources: [] };
}
