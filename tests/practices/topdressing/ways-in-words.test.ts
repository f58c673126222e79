import { expect, it } from 'vitest';
import { pileWords } from '../../../src/practices/topdressing/ways-in-words.ts';

it('a pile that is ready only for the last of the layers is not told as one that closes the first gap', () => {
  const pile = { litres: 850, startBy: '2027-06-02', readyBy: '2028-04-15' };
  expect(pileWords(pile, '2027-09-26')).toMatch(
    /counted on by ⟦2028-04-15⟧, for the last of these layers and no sooner\.$/,
  );
  expect(pileWords(pile, '2028-04-15')).toMatch(/counted on by ⟦2028-04-15⟧\.$/);
});
