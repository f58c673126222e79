/**
 * Soil textures and hardiness zones.
 */
import type { Row, Span } from './row.ts';

/** Water a soil texture holds (FAO-56 Table 19), m³/m³. */
export interface SoilTexture extends Row<'fieldCapacity' | 'wiltingPoint'> {
  id: string;
  name: string;
  fieldCapacity: Span;
  wiltingPoint: Span;
  /** How it behaves when judged for work: coarse, medium or fine. */
  workClass: 'coarse' | 'medium' | 'fine';
}

/** Half a hardiness zone: mean yearly minimum from `fromF` (included) to `belowF`, °F. */
export interface HardinessZone {
  zone: string;
  fromF: number;
  belowF: number;
}
