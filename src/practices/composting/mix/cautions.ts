/**
 * What to mind with the materials of a mix: what can hurt whoever builds it first.
 */
import type { Feedstock } from '../../../handbook/shapes/feedstock.ts';

/** Materials that rats and flies come for. */
const FOOD: ReadonlySet<string> = new Set(['kitchen_vegetable_scraps', 'food_waste_mixed_plant', 'fruit_scraps']);
/** Dry enough to raise dust, percent water. House default. */
const DUSTY_BELOW_PCT = 40;

/** Ids of materials that hold sticks. */
const STIFF = /twigs|stalks|trimmings/;

const DUST =
  'Dry leaves, straw and hay hold mould spores: wet them before you fork them, wear a mask, and leave it to others if your lungs or immunity are weak.';
const DUNG = 'Manure: wear gloves, wash your hands, and see that your tetanus shot is not too old.';
const RATS =
  'Food draws rats: a bin closed all round, wire mesh beneath it, and each lot buried in the pile under browns.';
const STICKS = 'Nothing thicker than half an inch: snip sticks, or leave them out.';

/** Every caution of some materials, each once, with whose it is. */
export function mixCautions(materials: readonly Feedstock[]): string[] {
  const some = (is: (material: Feedstock) => boolean): boolean => materials.some(is);
  const own = new Map<string, Set<string>>();
  for (const { name, cautions } of materials) {
    for (const caution of cautions) own.set(caution, (own.get(caution) ?? new Set()).add(name));
  }
  return [
    ...(some(({ moisturePctWet }) => (moisturePctWet?.usual ?? 100) < DUSTY_BELOW_PCT) ? [DUST] : []),
    ...(some(({ manure }) => manure) ? [DUNG] : []),
    ...(some(({ id }) => FOOD.has(id)) ? [RATS] : []),
    ...[...own].map(([caution, names]) => `${[...names].join('; ')}: ${caution}`),
    ...(some(({ id }) => STIFF.test(id)) ? [STICKS] : []),
  ];
}
