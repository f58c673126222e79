/**
 * Compost by the barrow.
 */
import { COMPOST_KG_PER_M3 } from './compost-layer.ts';

/** Litres in a barrow load: a 3 cu ft barrow, not heaped. House default. */
const BARROW_LITRES = 75;

/** Weight of a full barrow of compost, kg. */
export const BARROW_KG = Math.round((BARROW_LITRES / 1000) * COMPOST_KG_PER_M3);

/** Barrow loads in words, rounded up to a half. */
export function barrowLoads(litres: number): string {
  const halves = Math.ceil((litres / BARROW_LITRES) * 2);
  if (halves <= 1) return 'half a barrow load';
  return halves === 2 ? '1 barrow load' : `${halves / 2} barrow loads`;
}
