/**
 * How much water soils hold: FAO Irrigation and Drainage Paper 56, Table 19. Which textures work as coarse, medium and
 * fine ground is common practice.
 */
import type { SoilTexture } from './shapes/ground.ts';
import type { Span } from './shapes/row.ts';

function texture(
  id: string,
  name: string,
  workClass: SoilTexture['workClass'],
  fieldCapacity: Span,
  wiltingPoint: Span,
): SoilTexture {
  return { id, name, workClass, fieldCapacity, wiltingPoint, sources: ['agro:S1'], marks: {} };
}

function span(low: number, high: number): Span {
  return { low, high };
}

/** The nine textures, coarse to fine. Water in m³/m³: at field capacity, then at the wilting point. */
export const soilTextures: readonly SoilTexture[] = [
  texture('sand', 'Sand', 'coarse', span(0.07, 0.17), span(0.02, 0.07)),
  texture('loamy_sand', 'Loamy sand', 'coarse', span(0.11, 0.19), span(0.03, 0.1)),
  texture('sandy_loam', 'Sandy loam', 'coarse', span(0.18, 0.28), span(0.06, 0.16)),
  texture('loam', 'Loam', 'medium', span(0.2, 0.3), span(0.07, 0.17)),
  texture('silt_loam', 'Silt loam', 'medium', span(0.22, 0.36), span(0.09, 0.21)),
  texture('silt', 'Silt', 'medium', span(0.28, 0.36), span(0.12, 0.22)),
  texture('silt_clay_loam', 'Silty clay loam', 'fine', span(0.3, 0.37), span(0.17, 0.24)),
  texture('silty_clay', 'Silty clay', 'fine', span(0.3, 0.42), span(0.17, 0.29)),
  texture('clay', 'Clay', 'fine', span(0.32, 0.4), span(0.2, 0.24)),
];

/** The textures by id. */
export const soilTextureById: ReadonlyMap<string, SoilTexture> = new Map(soilTextures.map((soil) => [soil.id, soil]));
