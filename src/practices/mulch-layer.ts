/**
 * Figures of a loose mulch that more than one practice reckons with.
 */
import type { Bed } from '../garden/garden.ts';
import { areaOf } from './bed-timeline.ts';

/** Depth of a loose mulch of leaves or straw on bare ground, mm: 2–3 in (veg:V22). */
export const BARE_DEPTH_MM = 65;

/** Litres of loose mulch over a bed or a share of it, as piled: m² × mm. */
export function mulchLitres(bed: Bed, depthMm: number, share = 1): number {
  return Math.round(areaOf(bed) * share * depthMm);
}
