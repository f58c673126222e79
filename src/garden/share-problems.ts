/**
 * Crops that are given more of a bed than it has. Works on plain data that may be wrong in other ways, so that every problem
 * shows at once.
 */
import { formatQuantity } from '../measures/quantity.ts';
import { slug } from './ids.ts';
import type { Problem } from './problem.ts';
import { rowsOf, textOf } from './raw-rows.ts';

/** What an area may be out by where it was written to the hundredth of a square metre. */
const ROUNDING_M2 = 0.01;

/** Whether an area is more than there is, roundings aside. */
export function isMoreThan(areaM2: number, thereM2: number): boolean {
  return areaM2 > thereM2 + ROUNDING_M2;
}

/** Every planting whose share is larger than its bed. */
export function shareProblems(
  file: unknown,
  existing?: { beds: readonly { id?: string | undefined; name: string }[] },
): Problem[] {
  const beds = rowsOf(file, 'beds').map((row) => {
    const [name, id] = [textOf(row, 'name'), textOf(row, 'id')];
    const held = existing?.beds.find((bed) => bed.name === name)?.id;
    const words = [name, id, held, name && slug(name)].filter((word) => word !== undefined);
    return { name: name ?? id ?? 'the bed', words, areaM2: numberOf(row, 'lengthM') * numberOf(row, 'widthM') };
  });
  const told = (areaM2: number): string => areaTold(areaM2, isInFeet(file));
  return rowsOf(file, 'plantings').flatMap((row, at) => {
    const areaM2 = numberOf(row, 'areaM2');
    const bed = beds.find(({ words }) => words.includes(textOf(row, 'bed') ?? ''));
    if (bed === undefined || !isMoreThan(areaM2, bed.areaM2)) return [];
    return [
      {
        where: `plantings[${at}].areaM2`,
        what: `${told(areaM2)} is more than ${bed.name} has: ${told(Math.round(bed.areaM2 * 100) / 100)}.`,
        mend: 'Give the part of the bed that this crop takes, or leave it out for the whole bed.',
      },
    ];
  });
}

/** Whether the file asks for tasks in US units. */
function isInFeet(file: unknown): boolean {
  const garden: unknown = typeof file === 'object' && file !== null ? Reflect.get(file, 'garden') : undefined;
  return typeof garden === 'object' && garden !== null && Reflect.get(garden, 'units') === 'us';
}

/** An area as the file has it, and in square feet beside it for whoever reads in those. */
function areaTold(areaM2: number, inFeet: boolean): string {
  return `${areaM2} m²${inFeet ? ` (${formatQuantity({ value: areaM2, unit: 'm2' }, 'us')})` : ''}`;
}

/** Not a number where the file has none: no comparison with it holds. */
function numberOf(row: object, key: string): number {
  const value: unknown = Reflect.get(row, key);
  return typeof value === 'number' ? value : Number.NaN;
}
