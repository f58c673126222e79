/**
 * Sizes in a garden file that are hardly meant: beds nobody can reach across, and wishes for more than there is.
 */
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import { isMoreThan } from '../../garden/share-problems.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { quantity } from '../../measures/quantity.ts';

/** The widest bed an arm reaches the middle of from both paths, metres. Common practice: 1.2 m, and little more. */
const WIDEST_M = 1.5;
const USUAL_M = 1.2;

/** Beds wider than an arm reaches from both sides: they would be trodden on. */
export function widthDoubts({ beds }: GardenFile): Problem[] {
  return beds.flatMap(({ name, lengthM, widthM }, at) => {
    const acrossM = Math.min(lengthM, widthM);
    if (acrossM <= WIDEST_M) return [];
    return [
      {
        where: `beds[${at}].${widthM <= lengthM ? 'widthM' : 'lengthM'}`,
        what: `${name} is ${quantity(acrossM, 'm')} across, more than can be reached from its paths without stepping on it.`,
        mend: `Perhaps another length was meant: ${quantity(USUAL_M, 'm')} is usual.`,
      },
    ];
  });
}

/** Wishes for more than the whole garden has. */
export function wishDoubts({ beds, wishes }: GardenFile): Problem[] {
  const gardenM2 = beds.reduce((sum, { lengthM, widthM }) => sum + lengthM * widthM, 0);
  return wishes.flatMap(({ crop, beds: wanted = 0, areaM2 = 0 }, at) => {
    const isTooMany = wanted > beds.length;
    if (!isTooMany && !isMoreThan(areaM2, gardenM2)) return [];
    const name = vegetableById(crop).name.toLowerCase();
    const what = isTooMany
      ? `${wanted} beds of ${name} are wished for, and the garden has ${beds.length}.`
      : `${quantity(areaM2, 'm2')} of ${name} are wished for, and the garden has ${quantity(Math.round(gardenM2 * 100) / 100, 'm2')}.`;
    return [
      {
        where: `wishes[${at}].${isTooMany ? 'beds' : 'areaM2'}`,
        what,
        mend: 'Perhaps a figure has a nought too many; as it stands, a rotation gives what there is.',
      },
    ];
  });
}
