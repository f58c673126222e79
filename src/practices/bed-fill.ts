/**
 * What a new bed is filled with: topsoil from its paths, the household's own compost as far as any is free, and bought bed
 * mix for the rest. Litres, square metres and metres.
 */
import { MM_PER_INCH } from '../measures/units.ts';

/** A bed to be filled. */
export interface BedToFill {
  lengthM: number;
  widthM: number;
  depthM: number;
  /** Paths that topsoil can be scooped from, m²; absent where nobody measured them. */
  pathsM2?: number;
}

/** Depth of topsoil scooped from a path, mm: 2 to 3 in. Common practice; reckoned by the lower, so that none is missing. */
export const SCOOPED_MM = { low: 2 * MM_PER_INCH, high: 3 * MM_PER_INCH } as const;
/** Width of a path beside a bed where nobody measured any, m: 18 in, on both long sides. House default. */
export const PATH_WIDTH_M = 0.45;
/** Most compost in a new bed, mm: 2 to 3 in, once (compost:S35, veg:V22). EM 9308 has 3 to 4 in where it is dug in (veg:V17). */
export const NEW_BED_COMPOST_MM = 3 * MM_PER_INCH;
/** Most of a bed's fill that may be compost: more of it sinks away and gathers salts. House default. */
export const COMPOST_SHARE = 0.3;
/** By how much what is brought loose sinks in its first season. No figure is published: a tenth is a house default. */
export const SETTLING_SHARE = 0.1;
/** Weight of moist topsoil, kg a litre. From memory. */
const SOIL_KG_PER_L = 1.3;
/** Weight of bed mix, kg a litre. From memory; a seller's own figure goes before it. */
const MIX_KG_PER_L = 1;

/** What sets how much compost a bed may have. */
export type CompostLimit = 'depth' | 'share' | 'phosphorus';

/** A bed's fill, whole litres. */
export interface BedFill {
  areaM2: number;
  /** Its shorter side, metres. */
  widthM: number;
  /** What the bed holds once it has settled. */
  volumeL: number;
  paths: { areaM2: number; measured: boolean };
  /** Topsoil from the paths, as it lies there: at the lower depth, and what the higher would give. */
  topsoilL: number;
  /** As much of the paths as that takes, m²: less than all of them where the bed has no room for more. */
  scoopedM2: number;
  topsoilMostL: number;
  /** Left to be filled with what is brought, settled and loose. */
  restL: number;
  looseL: number;
  /** The most compost that may go in, and what sets that. */
  compostMostL: number;
  compostBy: CompostLimit;
  /** The household's own compost in it. */
  compostL: number;
  /** Bought bed mix, loose. */
  mixL: number;
  mixKg: number;
  topsoilKg: number;
  /** All that is shovelled and pushed, litres. */
  movedL: number;
}

/**
 * Works a bed's fill out.
 *
 * @param freeCompostL compost of the household that is promised to no other bed
 * @param phosphorus whether the soil test found the ground very high in phosphorus: then no compost goes in
 */
export function bedFill(bed: BedToFill, { freeCompostL = 0, phosphorus = false } = {}): BedFill {
  const areaM2 = bed.lengthM * bed.widthM;
  const volumeL = whole(areaM2 * bed.depthM * 1000);
  const paths = { areaM2: bed.pathsM2 ?? 2 * bed.lengthM * PATH_WIDTH_M, measured: bed.pathsM2 !== undefined };
  const { most: compostMostL, by: compostBy } = compostLimit(areaM2, volumeL, phosphorus);
  const room = volumeL - compostMostL;
  const scooped = (depthMm: number): number => Math.min(room, Math.floor(paths.areaM2 * depthMm));
  const topsoilL = scooped(SCOOPED_MM.low);
  const restL = volumeL - topsoilL;
  const looseL = whole(restL * (1 + SETTLING_SHARE));
  const compostL = Math.floor(Math.min(compostMostL, freeCompostL));
  const mixL = looseL - compostL;
  return {
    areaM2,
    widthM: Math.min(bed.lengthM, bed.widthM),
    volumeL,
    paths,
    topsoilL,
    scoopedM2: topsoilL < room ? paths.areaM2 : topsoilL / SCOOPED_MM.low,
    topsoilMostL: scooped(SCOOPED_MM.high),
    restL,
    looseL,
    compostMostL,
    compostBy,
    compostL,
    mixL,
    mixKg: Math.round(mixL * MIX_KG_PER_L),
    topsoilKg: Math.round(topsoilL * SOIL_KG_PER_L),
    movedL: topsoilL + looseL,
  };
}

function compostLimit(areaM2: number, volumeL: number, phosphorus: boolean): { most: number; by: CompostLimit } {
  if (phosphorus) return { most: 0, by: 'phosphorus' };
  const [byDepth, byShare] = [areaM2 * NEW_BED_COMPOST_MM, volumeL * COMPOST_SHARE];
  return byShare < byDepth ? { most: Math.floor(byShare), by: 'share' } : { most: Math.floor(byDepth), by: 'depth' };
}

/** Litres rounded up; a hundredth over a whole one is the arithmetic's, not the bed's. */
function whole(litres: number): number {
  return Math.ceil(Math.round(litres * 100) / 100);
}

/** Weight of a barrow of so many litres heaped level with moist soil, kg. */
export function soilKg(litres: number): number {
  return Math.round(litres * SOIL_KG_PER_L);
}
