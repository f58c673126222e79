/**
 * Crops that are given more of a bed than it has.
 */
import type { GardenFile } from './garden-file.ts';
import { slug } from './ids.ts';
import type { Problem } from './problem.ts';

/** What an area may be out by where it was written to the hundredth of a square metre. */
const ROUNDING_M2 = 0.01;

/** Every planting whose share is larger than its bed. Beds may be named as in {@link withIds}. */
export function shareProblems({ beds, plantings }: GardenFile, existing?: GardenFile): Problem[] {
  return plantings.flatMap(({ bed: word, areaM2 }, at) => {
    const bed = beds.find(({ id, name }) => [name, id, slug(name), heldId(name, existing)].includes(word));
    const bedM2 = bed === undefined ? undefined : bed.lengthM * bed.widthM;
    if (bed === undefined || bedM2 === undefined || areaM2 === undefined || areaM2 <= bedM2 + ROUNDING_M2) return [];
    return [
      {
        where: `plantings[${at}].areaM2`,
        what: `${areaM2} is more than ${bed.name} has: ${Math.round(bedM2 * 100) / 100} m².`,
        mend: 'Give the part of the bed that this crop takes, or leave it out for the whole bed.',
      },
    ];
  });
}

function heldId(name: string, existing: GardenFile | undefined): string | undefined {
  return existing?.beds.find((bed) => bed.name === name)?.id;
}
