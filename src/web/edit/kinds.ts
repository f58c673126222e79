/**
 * Everything of a garden that can be told in a form, a line a kind.
 */

import { diseases, fed, mulches, soilSqueezes, soilTests, topdressed } from './kinds/bed-facts.ts';
import { beds } from './kinds/beds.ts';
import { bedsAlike } from './kinds/beds-alike.ts';
import { coverStands } from './kinds/cover-stands.ts';
import { gardenKinds } from './kinds/garden-kinds.ts';
import type { EditKind } from './kinds/kind.ts';
import type { BedKind } from './kinds/of-a-bed.ts';
import { plantings } from './kinds/plantings.ts';

/** What is in a bed, was done to it and found of it, in the order its page tells it. */
export const bedKinds: readonly BedKind[] = [
  plantings,
  coverStands,
  mulches,
  topdressed,
  fed,
  soilTests,
  soilSqueezes,
  diseases,
];

/** The catalogue. */
export const kinds: readonly EditKind[] = [beds, bedsAlike, ...bedKinds, ...gardenKinds];
