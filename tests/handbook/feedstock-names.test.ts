import { describe, expect, it } from 'vitest';
import { feedstockNamed, feedstockWord, feedstockWords } from '../../src/handbook/feedstock-names.ts';
import { feedstocks } from '../../src/handbook/feedstocks.ts';
import { keptOut, keptOutNamed } from '../../src/handbook/kept-out.ts';

describe('names of feedstocks', () => {
  it.each([
    ['dry-leaves', 'leaves_dry_loose'],
    ['Dry leaves', 'leaves_dry_loose'],
    ['grass_clippings', 'grass_clippings_fresh_loose'],
    ['STRAW', 'straw_general'],
    ['straw_wheat', 'straw_wheat'],
    ['Fresh grass clippings, packed', 'grass_clippings_compacted'],
    ['kitchen scraps', 'kitchen_vegetable_scraps'],
  ])('%s means %s', (word, id) => {
    expect(feedstockNamed(word)?.id).toBe(id);
  });

  it('lead back to the feedstock they are told for', () => {
    for (const row of feedstocks) expect(feedstockNamed(feedstockWord(row)), row.id).toBe(row);
  });

  it('mean one thing each, and none that is kept out', () => {
    expect(new Set(feedstockWords).size).toBe(feedstockWords.length);
    expect(feedstockWords.filter((word) => keptOutNamed(word))).toEqual([]);
  });
});

describe('what is kept out', () => {
  it('is named once each, says why, and where it goes instead', () => {
    const words = keptOut.flatMap(({ id, words }) => [id, ...words]);
    expect(new Set(words).size).toBe(words.length);
    for (const { why, instead } of keptOut) expect(`${why} ${instead}`).toMatch(/\. .*\.$/);
  });

  it('holds what the books keep out: meat, dung of meat eaters, sick plants, seeding and running weeds', () => {
    for (const word of ['meat', 'fish', 'dairy', 'oil', 'dog-waste', 'diseased-plants', 'seeding-weeds', 'quackgrass'])
      expect(keptOutNamed(word), word).toBeDefined();
  });

  it('does not hold healthy weeds or tops', () => {
    for (const word of ['soft-weeds', 'tomato-tops', 'leaves']) expect(keptOutNamed(word)).toBeUndefined();
  });
});
