/**
 * What soil tests say of a bed: its own newest, or the garden's.
 */
import type { Garden, SoilTest } from '../garden/garden.ts';

/** Soil phosphorus from which none is added, ppm: already very high (compost:S36). */
export const VERY_HIGH_PHOSPHORUS_PPM = 25;

/** Organic matter of soil nobody has tested, percent. House default: an ordinary field soil. */
export const UNTESTED_PERCENT = 2;

/**
 * Soil tests that speak for a bed, newest first: its own where it has any, else those of the whole garden. Of two on a
 * day the richer soil comes first, so that what is spread does not hang on the order they were written in.
 */
export function testsOf({ soilTests }: Pick<Garden, 'soilTests'>, bedId: string): SoilTest[] {
  const newest = [...soilTests].sort((a, b) => (a.on > b.on ? -1 : a.on < b.on ? 1 : poorer(a, b)));
  const own = newest.filter((test) => test.bedId === bedId);
  return own.length > 0 ? own : newest.filter((test) => test.bedId === undefined);
}

function poorer(a: SoilTest, b: SoilTest): number {
  const { phosphorusPpm: p = 0, organicMatterPercent: matter = 0 } = a;
  return (b.phosphorusPpm ?? 0) - p || (b.organicMatterPercent ?? 0) - matter;
}

/** The newest figure of a kind that was measured for a bed. */
export function lastTest(
  garden: Pick<Garden, 'soilTests'>,
  bedId: string,
  figure: (test: SoilTest) => number | undefined,
): number | undefined {
  return testsOf(garden, bedId)
    .map(figure)
    .find((value) => value !== undefined);
}
