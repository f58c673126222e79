/**
 * How a mix is laid up in a bin: browns and greens in turn, browns first and last.
 */
import type { Mix } from './mix.ts';

/** A bin's floor, and its volume. */
export interface Room {
  floorM2: number;
  litres: number;
}

/** Layers of a pile. A centimetre over a square metre is ten litres. */
export interface Layers {
  /** Layers of greens, and of browns: one more, so that they lie at the bottom and on top. */
  greens: number;
  browns: number;
  greensCm: number;
  brownsCm: number;
  heightCm: number;
  /** Litres that do not go in at once; zero where all do. */
  overL: number;
}

/** Thickest layer of greens that lets air through and does not mat: 2 in. Common practice. */
const THICKEST_GREENS_CM = 5;
/** Thickest layer of browns that greens reach through: 6 in. Common practice. */
const THICKEST_BROWNS_CM = 15;

/** A bin of which only the volume is known, taken to be as wide and deep as it is high. House default. */
export function roomOf(litres: number): Room {
  return { litres, floorM2: (litres / 1000) ** (2 / 3) };
}

/** The layers of a mix in a bin; nothing where it has no greens or no browns to lay between. */
export function layersOf({ brownsL, greensL, whole }: Mix, { floorM2, litres }: Room): Layers | undefined {
  if (brownsL <= 0 || greensL <= 0) return undefined;
  const deepCm = (volumeL: number): number => volumeL / (10 * floorM2);
  const greens = Math.max(
    1,
    Math.ceil(deepCm(greensL) / THICKEST_GREENS_CM - 1e-9),
    Math.ceil(deepCm(brownsL) / THICKEST_BROWNS_CM - 1e-9) - 1,
  );
  return {
    greens,
    browns: greens + 1,
    greensCm: deepCm(greensL) / greens,
    brownsCm: deepCm(brownsL) / (greens + 1),
    heightCm: deepCm(whole.litres),
    overL: Math.max(0, whole.litres - litres),
  };
}
