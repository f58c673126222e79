/**
 * How much of a crop a bed takes: rows, metres of row and plants, from the spacing the sources print.
 */
import { CM_PER_INCH } from '../../measures/units.ts';
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
 * The layout of a bed given over to one crop. Plants stand at the middle of the printed spacing in the row, rows at the
 * narrow end of theirs: a raised bed has no paths between them.
 *
 * @returns nothing for a spacing that is not printed as two figures
 */
export function layoutOf({ crop, bed }: Pick<PlantingInBed, 'crop' | 'bed'>): Layout | undefined {
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

/** Whether a planting has its bed to itself while it grows: only then is it known how much of it goes in. */
export function hasBedAlone({ planting, spans }: PlantingInBed): boolean {
  const own = spans.find((span) => span.planting.id === planting.id);
  return spans.every(
    (span) =>
      span.planting.id === planting.id ||
      (span.to !== undefined && span.to <= planting.start.day) ||
      (own?.to !== undefined && own.to <= span.from),
  );
}
