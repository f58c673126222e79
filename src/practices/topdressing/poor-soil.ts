/**
 * Sandy and clay beds: why compost, how much, over how many years, and when to stop. The depth stays the household's.
 */
import type { Bed, Garden } from '../../garden/garden.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import type { SoilTexture } from '../../handbook/shapes/ground.ts';
import { MM_PER_INCH } from '../../measures/units.ts';
import { type BedLayer, RICH_MATTER_PERCENT } from '../compost-layer.ts';
import type { Reason } from '../draft.ts';
import { textureOf, textureRow } from '../soil-class.ts';
import { lastTest, UNTESTED_PERCENT, VERY_HIGH_PHOSPHORUS_PPM } from '../soil-test.ts';

/** Most that such a bed is given in a year, mm: as every established one (compost:S36). Nothing is dug in. */
export const BUILD_UP_MM = Math.round(MM_PER_INCH);
/** Percent organic matter that an inch of compost a year, left on top, adds to the soil of a year. From memory. */
const GAIN_PERCENT = { low: 0.5, high: 1 } as const;
/** A spade's depth, mm. */
const SPADE_MM = 200;

/** What makes a soil poor. */
export type PoorSoil = 'sandy' | 'clay';

/** Whether a bed's soil is sandy or clay; a bed that was filled has the texture the file gives it, or none of these. */
export function poorSoilOf(garden: Pick<Garden, 'place'>, bed: Bed): PoorSoil | undefined {
  if (bed.soilTexture === undefined && thereFrom(bed) !== undefined) return undefined;
  const texture = textureOf(garden, bed);
  if (texture === 'sand' || texture === 'loamy_sand') return 'sandy';
  return textureRow(texture).workClass === 'fine' ? 'clay' : undefined;
}

/** Water that a spade's depth of a soil holds for roots, mm: from the middle of field capacity to that of wilting. */
export function heldWaterMm({ fieldCapacity, wiltingPoint }: SoilTexture): number {
  const middle = ({ low, high }: { low: number; high: number }): number => (low + high) / 2;
  return Math.round((middle(fieldCapacity) - middle(wiltingPoint)) * SPADE_MM);
}

/** Years in which a layer a year brings a soil from what it has to enough. */
export function buildUpYears(fromPercent: number, depthMm: number): { low: number; high: number } {
  const wanted = RICH_MATTER_PERCENT - fromPercent;
  const years = (gain: number): number => Math.ceil((wanted / gain) * (BUILD_UP_MM / depthMm) - 1e-9);
  return { low: years(GAIN_PERCENT.high), high: years(GAIN_PERCENT.low) };
}

/** The case for compost on such a bed; none on other soils, nor where a test found enough organic matter. */
export function poorSoilReasons(garden: Garden, bed: Bed, layer: BedLayer): Reason[] {
  const kind = poorSoilOf(garden, bed);
  const matter = lastTest(garden, bed.id, ({ organicMatterPercent }) => organicMatterPercent);
  if (kind === undefined || (matter ?? 0) >= RICH_MATTER_PERCENT) return [];
  return [whyOf(kind, textureRow(textureOf(garden, bed))), ...amountOf(layer, matter), ...sandOf(kind)];
}

function whyOf(kind: PoorSoil, soil: SoilTexture): Reason {
  const name = soil.name.toLowerCase();
  if (kind === 'clay') return { rule: 'topdress.clay', saw: { soil: name }, source: 'agro:S37' };
  const [holdsMm, loamMm] = [heldWaterMm(soil), heldWaterMm(textureRow('loam'))];
  return { rule: 'topdress.sandy', saw: { soil: name, depthMm: SPADE_MM, holdsMm, loamMm }, source: 'agro:S1' };
}

/** How much and how long; nothing is said of years where phosphorus keeps compost off. */
function amountOf({ by, depthMm, phosphorusPpm }: BedLayer, matter: number | undefined): Reason[] {
  if (phosphorusPpm !== undefined) {
    const saw = { ppm: phosphorusPpm };
    return [{ rule: 'topdress.build-up-stop', saw, limit: VERY_HIGH_PHOSPHORUS_PPM, source: 'compost:S36' }];
  }
  const from = matter ?? UNTESTED_PERCENT;
  const [usual, own] = [buildUpYears(from, BUILD_UP_MM), buildUpYears(from, depthMm)];
  return [
    {
      rule: 'topdress.build-up',
      saw: {
        from,
        tested: matter === undefined ? 'no' : 'yes',
        enough: RICH_MATTER_PERCENT,
        low: usual.low,
        high: usual.high,
        ...(depthMm < BUILD_UP_MM ? { depthMm, ownLow: own.low, ownHigh: own.high, by } : {}),
        ppm: VERY_HIGH_PHOSPHORUS_PPM,
      },
      limit: BUILD_UP_MM,
      source: 'compost:S36',
    },
    { rule: 'topdress.build-up-rate', saw: { lowMm: 2 * MM_PER_INCH, highMm: 3 * MM_PER_INCH }, source: 'veg:V54' },
  ];
}

function sandOf(kind: PoorSoil): Reason[] {
  return kind === 'clay' ? [{ rule: 'topdress.no-sand', saw: {}, source: 'from memory' }] : [];
}

/** What is done on such a bed besides spreading. */
export const POOR_SOIL_STEP: Readonly<Record<PoorSoil, string>> = {
  sandy:
    'On sand mulch over it once the crop is up, and water less at a time but more often: little stays where roots are.',
  clay: 'Mix no sand in. Where the clay is hard below, push a fork in and lean on it when a handful crumbles; turn nothing over.',
};
