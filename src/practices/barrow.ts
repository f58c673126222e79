/**
 * Compost by the barrow.
 */
import { COMPOST_KG_PER_M3 } from './compost-layer.ts';

/** Litres in a barrow load: a 3 cu ft barrow, not heaped. House default. */
export const BARROW_LITRES = 75;

/** Weight of a full barrow of compost, kg. */
export const BARROW_KG = Math.round((BARROW_LITRES / 1000) * COMPOST_KG_PER_M3);

/** Barrow loads in words, rounded up to a half: "half a barrow" at least, "1 barrow load", "1 ½ barrow loads". */
export function barrowLoads(litres: number): string {
  const halves = Math.ceil((litres / BARROW_LITRES) * 2);
  if (halves <= 1) return 'half a barrow';
  if (halves === 2) return '1 barrow load';
  return `${Math.floor(halves / 2)}${halves % 2 === 0 ? '' : ' ½'} barrow loads`;
}
