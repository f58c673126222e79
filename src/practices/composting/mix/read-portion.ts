/**
 * A material and its amount as somebody types them.
 */
import { nearestNames } from '../../../garden/nearest-name.ts';
import type { Problem } from '../../../garden/problem.ts';
import { feedstockNamed, feedstockWord, feedstockWords } from '../../../handbook/feedstock-names.ts';
import { keptOutNamed } from '../../../handbook/kept-out.ts';
import type { Feedstock } from '../../../handbook/shapes/feedstock.ts';
import { readHeap, type TypedHeap } from '../../../measures/typed-amount.ts';
import type { UnitSystem } from '../../../measures/units.ts';
import type { Portion } from './portion.ts';

/** A portion as it was typed, with whose units. */
export interface TypedPortion extends Portion {
  units: UnitSystem;
}

const AMOUNT_MEND = 'Give a volume or a weight with its unit, such as 200L, 50gal, 7ft3, 1yd3, 12kg or 30lb.';

/** The material a word names, or why it cannot be used. */
export function readMaterial(word: string): Feedstock | Problem {
  const out = keptOutNamed(word);
  if (out) return { where: word, what: `This pile takes no ${out.name}. ${out.why}`, mend: out.instead };
  const material = feedstockNamed(word);
  if (material) return material;
  const near = nearestNames(word, feedstockWords).map((name) => feedstockNamed(name));
  const words = [...new Set(near.flatMap((each) => each ?? []).map(feedstockWord))];
  return {
    where: word === '' ? 'a material' : word,
    what: word === '' ? 'It has no name.' : 'The handbook knows no such material.',
    mend:
      words.length > 0
        ? `Did you mean ${words.join(' or ')}?`
        : 'Known are such as dry-leaves, straw, grass-clippings.',
  };
}

/** A portion of a word and an amount, or every reason why it cannot be used. */
export function readPortion(word: string, amount: string): TypedPortion | Problem[] {
  const material = readMaterial(word.trim());
  const heap = readHeap(amount);
  const problems = [
    ...('mend' in material ? [material] : []),
    ...(heap === undefined ? [amountProblem(word, amount)] : []),
  ];
  return 'mend' in material || heap === undefined ? problems : { material, ...heapOf(heap) };
}

function amountProblem(word: string, amount: string): Problem {
  return {
    where: word,
    what: amount.trim() === '' ? 'It has no amount.' : `"${amount.trim()}" is no amount.`,
    mend: AMOUNT_MEND,
  };
}

function heapOf({ units, ...amount }: TypedHeap): Pick<TypedPortion, 'amount' | 'units'> {
  return { amount, units };
}

/** "dry-leaves:200L" as a portion, or every reason why it cannot be used. */
export function readPair(pair: string): TypedPortion | Problem[] {
  const colon = pair.indexOf(':');
  return colon < 0 ? readPortion(pair, '') : readPortion(pair.slice(0, colon), pair.slice(colon + 1));
}
