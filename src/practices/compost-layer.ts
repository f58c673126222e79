/**
 * Figures of the yearly layer of compost that more than one practice reckons with.
 */
import type { TopdressingHabit } from '../garden/garden.ts';

/**
 * Yearly layer where the garden names none: an inch, the most an established bed is given, because nobody has measured
 * its organic matter; half of it is enough from 5 % on (veg:V17, compost:S36; the 5 % from memory). House default.
 */
export const DEFAULT_HABIT: TopdressingHabit = { depthMm: 25, season: 'autumn' };

/** Bulk density of finished compost, kg/m³ (compost:S59: 1000–1200 lb a cubic yard). */
export const COMPOST_KG_PER_M3 = 650;
