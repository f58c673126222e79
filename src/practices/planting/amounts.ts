/**
 * How much of a crop a bed takes: rows, metres of row and plants, from the spacing the sources print.
 */
import type { Bed } from '../../garden/garden.ts';
import { CM_PER_INCH } from '../../measures/units.ts';
import { areaOf } from '../bed-timeline.ts';
import type { PlantingInBed } from './planting-in-bed.ts';

/** A bed laid out in rows along its length. */
export interface Layout {
  rows: number;
  betweenRowsCm: number;
  /** Between plants in the row, after thinning. */
  inRowCm: number;
  rowM: number;
  plants: number;
}

const SPACING = /^(\d+)(?:-(\d+))?(?: \(hills\))? × (\d+)(?:-(\d+))?$/;
const CM_PER_M = 100;

/**
 * The layout of the part of a bed that a crop has, or of all of it. Plants stand at the middle of the printed spacing in
 * the row, rows at the narrow end of theirs: a raised bed has no paths between them.
 *
 * @returns nothing for a spacing that is not printed as two figures
 */
export function layoutOf(at: Pick<PlantingInBed, 'crop' | 'bed' | 'planting'>): Layout | undefined {
  const { crop } = at;
  const bed = partOf(at);
  const printed = SPACING.exec(crop.spacingIn);
  if (printed === null) return undefined;
  const [low, high, between] = [Number(printed[1]), Number(printed[2] ?? printed[1]), Number(printed[3])];
  const inRowCm = ((low + high) / 2) * CM_PER_INCH;
  const betweenRowsCm = between * CM_PER_INCH;
  const [lengthM, widthM] = [Math.max(bed.lengthM, bed.widthM), Math.min(bed.lengthM, bed.widthM)];
  const rows = Math.max(1, Math.floor((widthM * CM_PER_M) / betweenRowsCm));
  const perRow = Math.max(1, Math.floor((lengthM * CM_PER_M) / inRowCm));
  return { rows, betweenRowsCm, inRowCm, rowM: rows * lengthM, plants: rows * perRow };
}

/** The part of its bed a planting has: all of its width, and so much of its length as makes up its share. */
export function partOf({ bed, planting: { areaM2 } }: Pick<PlantingInBed, 'bed' | 'planting'>): Bed {
  const [longM, shortM] = [Math.max(bed.lengthM, bed.widthM), Math.min(bed.lengthM, bed.widthM)];
  const share = areaM2 === undefined ? 1 : Math.min(1, areaM2 / areaOf(bed));
  return { ...bed, lengthM: longM * share, widthM: shortM };
}

/**
 * Whether it is known how much of a planting goes in: it has its bed to itself while it grows, or a share of it that is
 * told.
 */
export function hasBedAlone({ planting, spans }: PlantingInBed): boolean {
  if (planting.areaM2 !== undefined) return true;
  const own = spans.find((span) => span.planting.id === planting.id);
  return spans.every(
    (span) =>
      span.planting.id === planting.id ||
      (span.to !== undefined && span.to <= planting.start.day) ||
      (own?.to !== undefined && own.to <= span.from),
  );
}
