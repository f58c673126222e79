/**
 * The vegetables: when they are sown and set out, what soil and frost they bear, what they ask of the bed.
 *
 * Sowing weeks are counted from the median last spring freeze, last sowings in weeks before the median first autumn
 * freeze (0 °C both). `firstSowWeeks` is the first sowing or setting out; repeats run to the last one. `damageTempC`
 * is the warmer of two published figures: covering once too often costs little. A rotation of 99 years is a bed the
 * crop never leaves.
 */
import type { Vegetable } from './shapes/vegetable.ts';
import { beetsAndLettuces } from './vegetables/beets-and-lettuces.ts';
import { cabbageGreensAndRoots } from './vegetables/cabbage-kin.ts';
import { carrotFamily } from './vegetables/carrots.ts';
import { coleCrops } from './vegetables/cole-crops.ts';
import { cucurbits } from './vegetables/cucurbits.ts';
import { legumeVegetables } from './vegetables/legumes.ts';
import { nightshades } from './vegetables/nightshades.ts';
import { onions } from './vegetables/onions.ts';
import { otherVegetables } from './vegetables/others.ts';

/** Every vegetable of the handbook. */
export const vegetables: readonly Vegetable[] = [
  ...nightshades,
  ...legumeVegetables,
  ...cucurbits,
  ...coleCrops,
  ...cabbageGreensAndRoots,
  ...onions,
  ...carrotFamily,
  ...beetsAndLettuces,
  ...otherVegetables,
];

const byId: ReadonlyMap<string, Vegetable> = new Map(vegetables.map((crop) => [crop.id, crop]));

/**
 * The vegetable with an id.
 *
 * @throws RangeError when the handbook has none of that id
 */
export function vegetableById(id: string): Vegetable {
  const found = byId.get(id);
  if (found === undefined)
    throw new RangeError(`No vegetable is called "${id}" in the handbook. One that is: "tomato".`);
  return found;
}
