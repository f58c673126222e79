import { describe, expect, it } from 'vitest';
import { fitTold, gapInWords, readableFit, ruledOut } from '../../src/digest/fit-words.ts';
import type { GapFit } from '../../src/practices/cover-cropping/fit/fit.ts';
import { coverParts } from '../../src/practices/covers.ts';
import { nitrogenHeld } from '../practices/cover-cropping/fit/nitrogen-held.ts';

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

  it('tells nitrogen that is left or tied up, without a minus', () => {
    const told = (low: number, high: number) => linesOf({ nitrogen: nitrogenHeld(low, high) })[0];
    expect(told(1, 2)).toBe('Nitrogen: ⟦1 gPerM2⟧ to ⟦2 gPerM2⟧ for the next crop, carbon to nitrogen 11 to 14');
    expect(told(-4, 2)).toContain('from as much as ⟦4 gPerM2⟧ tied up while it rots to ⟦2 gPerM2⟧ for the next crop');
    expect(told(-4, -1)).toContain('ties up ⟦1 gPerM2⟧ to ⟦4 gPerM2⟧ while it rots');
  });

  it('counts seasons and winters, and gives no odds where none were counted', () => {
    const none = { of: 0, among: 0 };
    expect(linesOf({ establish: { share: { of: 27, among: 30 } } })).toEqual([
      'Grown in time: before hard cold in 27 of 30 seasons',
    ]);
    expect(linesOf({ establish: { share: none } })).toEqual([]);
    const shares = { lives: { of: 20, among: 30 }, unsure: { of: 6, among: 30 }, dies: { of: 4, among: 30 } };
    expect(linesOf({ winter: { fate: 'lives', coldKnown: true, ...shares, parts: [] } })).toEqual([
      'Winter: lives through 20, dies in 4, open in 6 of 30 winters',
    ]);
  });

  it('leaves out of the winters what never happened', () => {
    const shares = { lives: { of: 28, among: 30 }, unsure: { of: 0, among: 30 }, dies: { of: 2, among: 30 } };
    expect(linesOf({ winter: { fate: 'lives', coldKnown: true, ...shares, parts: [] } })).toEqual([
      'Winter: lives through 28, dies in 2 of 30 winters',
    ]);
    const all = { ...shares, lives: { of: 0, among: 30 }, dies: { of: 30, among: 30 } };
    expect(linesOf({ winter: { fate: 'dies', coldKnown: true, ...all, parts: [] } })[0]).toBe(
      'Winter: dies in all 30 winters',
    );
  });

  it('names a year once where days share it, and each where they do not', () => {
    const read = (text: string, beside = '2027-09-08') => readableFit(text, 'us', beside);
    expect(read('5 % by ⟦2028-05-13⟧, 10 % by ⟦2028-05-17⟧')).toBe('5 % by May 13, 10 % by May 17, 2028');
    expect(read('from ⟦2027-12-20⟧ to ⟦2028-02-29⟧')).toBe('from December 20 to February 29, 2028');
    expect(read('from ⟦2027-09-17⟧ to ⟦2027-10-10⟧')).toBe('from September 17 to October 10');
    expect(readableFit('from ⟦2028-04-19⟧ to ⟦2028-05-03⟧', 'metric', '2027-09-08')).toBe(
      'from 19 April to 3 May 2028',
    );
  });

  it('names a unit once where both ends of a span have it', () => {
    expect(readableFit('⟦0 gPerM2⟧ to ⟦6 gPerM2⟧ for the next crop', 'us', '2027-09-08')).toMatch(
      /^0 to [\d.]+ oz per 100 sq ft for the next crop$/,
    );
    expect(readableFit('⟦2 cm⟧ to ⟦4 cm⟧', 'metric', '2027-09-08')).toBe('2 to 4 cm');
    expect(readableFit('⟦2 cm⟧ to ⟦4 cm⟧', 'us', '2027-09-08')).toBe('¾ to 1 ½ in');
    expect(readableFit('by ⟦2 gPerM2⟧ and ⟦4 gPerM2⟧', 'metric', '2027-09-08')).not.toContain(' to ');
  });

  it('says that no bloom figure was published, and from when to look', () => {
    expect(linesOf({ bloom: { none: 'no published bloom figure', lookFrom: '2028-05-01' } })).toEqual([
      'Flowers: no published bloom figure; look for buds from ⟦2028-05-01⟧',
    ]);
  });

  it('tells flowers by what is seen, with the chance of each day', () => {
    const bloom = {
      close: '2028-05-17',
      event: 'anthesis',
      median: '2028-06-01',
      byRisk: [
        { percent: 5, close: '2028-05-13' },
        { percent: 10, close: '2028-05-17' },
      ],
      origin: { provenance: 'published' as const, sources: [] },
    };
    const [line] = linesOf({ bloom });
    expect(readableFit(line ?? '', 'us', '2027-09-08')).toBe(
      'Flowers: sheds pollen about June 1 in the middle year; chance of it: 5 % by May 13, 10 % by May 17, 2028',
    );
  });

  it('tells the seed of buckwheat apart from its flowers, and whose chances are told', () => {
    const bloom = {
      close: '2028-07-08',
      event: 'first flowers',
      median: '2028-07-05',
      seed: '2028-07-15',
      byRisk: [{ percent: 10, close: '2028-07-08' }],
      origin: { provenance: 'derived' as const, sources: [] },
    };
    expect(linesOf({ bloom })).toEqual([
      'Flowers: first flowers about ⟦2028-07-05⟧, viable seed about ⟦2028-07-15⟧ in the middle year; ' +
        'chance of seed: 10 % by ⟦2028-07-08⟧',
    ]);
  });

  it('tells each part of a mix by its name: the odds of one, and that the other has none', () => {
    const none = { none: 'no published bloom figure' as const, lookFrom: '2028-05-19' };
    const rye = {
      close: '2028-05-21',
      event: 'anthesis',
      median: '2028-06-01',
      byRisk: [{ percent: 10, close: '2028-05-21' }],
      origin: { provenance: 'derived' as const, sources: [] },
    };
    const parts = [
      { cover: 'hairy vetch', bloom: none },
      { cover: 'winter rye', bloom: rye },
    ];
    expect(linesOf({ bloom: { ...none, parts } })).toEqual([
      'Flowers: hairy vetch: no published bloom figure; look for buds from ⟦2028-05-19⟧; ' +
        'winter rye: sheds pollen about ⟦2028-06-01⟧ in the middle year; chance of it: 10 % by ⟦2028-05-21⟧',
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
