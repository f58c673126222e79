/**
 * Materials of a worked example, and portions of the handbook's.
 */
import { feedstockNamed } from '../../../../src/handbook/feedstock-names.ts';
import type { Feedstock } from '../../../../src/handbook/shapes/feedstock.ts';
import type { Portion } from '../../../../src/practices/composting/mix/portion.ts';

/** A material of which a published example states water, carbon and nitrogen, percent. */
export function stuff(id: string, moisturePct: number, carbonPct: number, nitrogenPct: number): Feedstock {
  return {
    id,
    name: id,
    class: carbonPct / nitrogenPct > 30 ? 'brown' : 'green',
    carbonToNitrogen: { usual: carbonPct / nitrogenPct },
    nitrogenPctDry: { usual: nitrogenPct },
    carbonPctDry: carbonPct,
    moisturePctWet: { usual: moisturePct },
    densityKgPerM3: { usual: 200 },
    manure: false,
    cautions: [],
    sources: [],
    marks: {},
  };
}

/** Litres of a material of the handbook, by its everyday word. */
export function litres(word: string, amount: number): Portion {
  return { material: named(word), amount: { litres: amount } };
}

/** A material of the handbook by its everyday word. */
export function named(word: string): Feedstock {
  const material = feedstockNamed(word);
  if (material === undefined) throw new RangeError(`The handbook has no ${word}.`);
  return material;
}
