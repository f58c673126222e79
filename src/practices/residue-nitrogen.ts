/**
 * Nitrogen that the next crop finds in a cover's residue.
 */

/**
 * The line of PNW 636 (cover:S7): next to nothing at 1.5 % nitrogen in dry matter, 35 lb a ton at 3.5 %, straight between;
 * held level beyond them, which is ours. It was measured on cover that was worked in.
 */
const LINE = { fromPercent: 1.5, toPercent: 3.5, gPerKgAPercent: 8.75 } as const;

/** Share of its nitrogen that residue left on the surface gives in a cold climate, a cautious figure (cover:S9). */
const SURFACE_SHARE = 0.25;

/** A share of several parts may come out a hair below what each has. */
const ROUNDING_PERCENT = 1e-6;

/** Nitrogen that a cereal past heading ties up at the most, g/m² (50 lb an acre, cover:S7). */
export const TIE_UP_G_PER_M2 = 5.6;

/** Share of dry matter that is carbon, percent. From memory. */
const CARBON_PERCENT = 42;

/** Nitrogen released in the first weeks after a cover is worked in, g per kg of dry matter, by its percent of nitrogen. */
export function releasedWorkedInGPerKg(percentN: number): number {
  const held = Math.min(Math.max(percentN, LINE.fromPercent), LINE.toPercent);
  return LINE.gPerKgAPercent * (held - LINE.fromPercent);
}

/** The same where it is left lying, in a cold climate. */
export function releasedOnSurfaceGPerKg(percentN: number): number {
  return 10 * percentN * SURFACE_SHARE;
}

/** Whether residue so poor in nitrogen takes some from the soil while it rots. */
export function tiesUp(percentN: number): boolean {
  return percentN < LINE.fromPercent - ROUNDING_PERCENT;
}

/** Carbon to nitrogen of tissue by its percent of nitrogen. */
export function carbonToNitrogen(percentN: number): number {
  return CARBON_PERCENT / percentN;
}
