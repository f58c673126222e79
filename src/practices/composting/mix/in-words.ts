/**
 * A mix and what is added to it, in pieces of sentences.
 */
import { quantity } from '../../../measures/quantity.ts';
import type { Mix } from './mix.ts';
import { contentsOf, makeupOf, type Portion } from './portion.ts';

/** An addition, in one piece of a sentence: "⟦120 L⟧ of dry leaves, loose (⟦14 kg⟧) and ⟦10 L⟧ of water". */
export function additionWords({ add, waterL }: { add: readonly Portion[]; waterL: number }): string {
  const things = [
    ...add.map(({ material, amount }) => {
      const { litres, wetKg } = contentsOf(amount, makeupOf(material));
      const kg = Math.ceil(wetKg * 10) / 10;
      return `${quantity(Math.ceil(litres), 'L')} of ${material.name.toLowerCase()} (${quantity(kg, 'kg')})`;
    }),
    ...(waterL > 0 ? [`${quantity(Math.ceil(waterL), 'L')} of water`] : []),
  ];
  return things.length < 2 ? things.join('') : `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`;
}

/** The middle of a mix: "about 38 to 1 and 59 % water". */
export function middleWords({ carbonToNitrogen, moisturePct }: Mix): string {
  return `about ${Math.round(carbonToNitrogen?.usual ?? 0)} to 1 and ${Math.round(moisturePct?.usual ?? 0)} % water`;
}
