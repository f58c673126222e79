/**
 * The yearly layer of compost: how thick it is on a bed, and figures of it that more than one practice reckons with.
 */
import type { Garden, TopdressingHabit } from '../garden/garden.ts';
import { lastTest, VERY_HIGH_PHOSPHORUS_PPM } from './soil-test.ts';

/**
 * Yearly layer where the garden names none and nobody has measured the soil: an inch, the most an established bed is
 * given (veg:V17, compost:S36). House default.
 */
const DEFAULT_HABIT: TopdressingHabit = { depthMm: 25, season: 'autumn' };
/** Half of it is enough from this much organic matter on, percent. From memory; the depths lie inside veg:V17. */
export const RICH_MATTER_PERCENT = 5;
/** The layer on such a soil, mm: half an inch. */
const RICH_SOIL_MM = 13;

/** Bulk density of finished compost, kg/m³ (compost:S59: 1000–1200 lb a cubic yard). */
export const COMPOST_KG_PER_M3 = 650;

/** A bed's layer, and what decided it. */
export interface BedLayer {
  depthMm: number;
  season: TopdressingHabit['season'];
  /** The household's own depth, that of the bed alone, the default, less of it on rich soil, or none where phosphorus is very high. */
  by: 'own' | 'bed' | 'default' | 'rich soil' | 'phosphorus';
  organicMatterPercent?: number;
  /** Measured, and very high. */
  phosphorusPpm?: number;
}

/** How thick a layer a bed is given each year: none on soil very high in phosphorus, else the household's own, else by what its soil test said. */
export function bedLayer(
  { beds, topdressing, soilTests }: Pick<Garden, 'beds' | 'topdressing' | 'soilTests'>,
  bedId: string,
): BedLayer {
  const ownMm = beds.find(({ id }) => id === bedId)?.topdressingMm;
  const matter = lastTest({ soilTests }, bedId, ({ organicMatterPercent }) => organicMatterPercent);
  const ppm = lastTest({ soilTests }, bedId, ({ phosphorusPpm }) => phosphorusPpm);
  const found = {
    ...(matter === undefined ? {} : { organicMatterPercent: matter }),
    ...(ppm !== undefined && ppm >= VERY_HIGH_PHOSPHORUS_PPM ? { phosphorusPpm: ppm } : {}),
  };
  const { season, depthMm } = topdressing ?? DEFAULT_HABIT;
  if (found.phosphorusPpm !== undefined) return { depthMm: 0, season, by: 'phosphorus', ...found };
  if (ownMm !== undefined) return { depthMm: ownMm, season, by: 'bed', ...found };
  if (topdressing !== undefined) return { depthMm, season, by: 'own', ...found };
  if (matter !== undefined && matter >= RICH_MATTER_PERCENT)
    return { depthMm: RICH_SOIL_MM, season, by: 'rich soil', ...found };
  return { depthMm, season, by: 'default', ...found };
}
