import { describe, expect, it } from 'vitest';
import { fitTold, gapInWords, ruledOut } from '../../src/digest/fit-words.ts';
import type { GapFit } from '../../src/practices/cover-cropping/fit/fit.ts';
import { coverParts } from '../../src/practices/covers.ts';

const choice = (more: Partial<GapFit>): GapFit => ({
  bedId: 'wall',
  gap: {},
  choice: { choice: 'cover', coverId: 'oats' },
  name: 'oats',
  verdict: 'good',
  points: 100,
  seed: [],
  needs: { inoculants: [], depths: [] },
  pros: [],
  cons: [],
  ...more,
});

const linesOf = (more: Partial<GapFit>) => fitTold(choice(more)).lines.map(({ what, text }) => `${what}: ${text}`);

describe('a choice in words', () => {
  it('tells when to sow, and the whole window', () => {
    const sow = { earliest: '2027-08-20', preferred: '2027-08-29', latest: '2027-09-24' };
    expect(linesOf({ sow, sowOn: '2027-08-29' })).toEqual([
      'Sow: about ⟦2027-08-29⟧, at any time from ⟦2027-08-20⟧ to ⟦2027-09-24⟧',
    ]);
  });

  it('counts seasons and winters, and gives no odds where none were counted', () => {
    const none = { of: 0, among: 0 };
    expect(linesOf({ establish: { share: { of: 27, among: 30 } } })).toEqual([
      'Comes up and grows before hard cold: in 27 of 30 seasons',
    ]);
    expect(linesOf({ establish: { share: none } })).toEqual([]);
    const shares = { lives: { of: 20, among: 30 }, unsure: { of: 6, among: 30 }, dies: { of: 4, among: 30 } };
    expect(linesOf({ winter: { fate: 'lives', ...shares, parts: [] } })).toEqual([
      'Winter: lives through 20, dies in 4, open in 6 of 30 winters',
    ]);
  });

  it('says that no bloom figure was published, and from when to look', () => {
    expect(linesOf({ bloom: { none: 'no published bloom figure', lookFrom: '2028-05-01' } })).toEqual([
      'Flowers: no published bloom figure; look for buds from ⟦2028-05-01⟧',
    ]);
  });

  it('gives seed both ways, whatever units the gardener reads', () => {
    const [part] = coverParts('oats');
    if (part === undefined) throw new Error('Oats are no cover.');
    const seed = [{ part, gPerM2: 12.3, from: 'cover:S4c' as const, grams: 36 }];
    expect(linesOf({ seed })).toEqual(['Seed: oats 36 g (1.3 oz)']);
  });

  it('names together what has no time to sow in the gap', () => {
    const never = (name: string): GapFit =>
      choice({
        name,
        verdict: 'unusable',
        cons: [{ rule: 'cover-fit.never-then', saw: { cover: name }, source: 'house default' }],
      });
    const kin = choice({
      name: 'mustard',
      verdict: 'unusable',
      cons: [{ rule: 'cover-fit.cabbage-kin', saw: { cover: 'mustard', crop: 'kale' }, source: 'cover:S4e' }],
    });
    expect(ruledOut([never('rye'), kin, never('wheat')])).toEqual([
      { why: 'Their time to sow does not lie in this gap.', names: ['rye', 'wheat'] },
      { why: expect.stringContaining('cabbage family'), names: ['mustard'] },
    ]);
  });

  it('tells a gap by the crops on either side', () => {
    expect(gapInWords({ from: '2027-08-29', before: 'snap bean', to: '2028-05-29', next: 'tomato' })).toBe(
      'after snap bean, from ⟦2027-08-29⟧, until tomato goes in on ⟦2028-05-29⟧',
    );
    expect(gapInWords({})).toBe('free now; nothing is planned after it');
  });
});
