import { describe, expect, it } from 'vitest';
import { feedstocks } from '../../../../src/handbook/feedstocks.ts';
import { layersOf, roomOf } from '../../../../src/practices/composting/mix/layers.ts';
import { mixOf } from '../../../../src/practices/composting/mix/mix.ts';
import { spanOf, UNPUBLISHED_SPREAD } from '../../../../src/practices/composting/mix/portion.ts';
import { standingOf } from '../../../../src/practices/composting/mix/target.ts';
import { litres, named } from './stuff.ts';

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
};

describe('two of dry leaves to one of grass', () => {
  const mix = mixOf([litres('dry-leaves', 200), litres('grass-clippings', 100)]);

  it('weighs what its densities say', () => {
    expect(mix.whole.wetKg).toBeCloseTo(23.8 + 20.8, 6);
  });

  it('lies somewhere from too rich to rather brown, because no two heaps are alike', () => {
    const { low = 0, usual = 0, high = 0 } = mix.carbonToNitrogen ?? {};
    // By hand: carbon 14.756 × 0.486 + 3.744 × 0.45 over nitrogen by 54 and 17.
    expect(usual).toBeCloseTo((14.756 * 0.486 + 3.744 * 0.45) / ((14.756 * 0.486) / 54 + (3.744 * 0.45) / 17), 6);
    expect(low).toBeLessThan(30);
    expect(high).toBeGreaterThan(usual);
  });

  it('keeps the rule of two to one', () => {
    expect(mix.brownsL / mix.greensL).toBe(2);
  });
});

describe('bands', () => {
  it('hold their middle, and weighing narrows them', () => {
    const byVolume = mixOf([litres('dry-leaves', 200), litres('kitchen-scraps', 60)]);
    const weighed = mixOf([
      { material: named('dry-leaves'), amount: { kg: 23.8 } },
      { material: named('kitchen-scraps'), amount: { kg: 27.3 } },
    ]);
    const [wide, narrow] = [byVolume.carbonToNitrogen, weighed.carbonToNitrogen];
    expect(narrow?.usual).toBeCloseTo(wide?.usual ?? 0, 6);
    expect((wide?.high ?? 0) - (wide?.low ?? 0)).toBeGreaterThan((narrow?.high ?? 0) - (narrow?.low ?? 0));
  });

  it('of a material alone are its own', () => {
    const { carbonToNitrogen, moisturePct } = mixOf([litres('dry-leaves', 10)]);
    expect(carbonToNitrogen?.low).toBeCloseTo(40, 6);
    expect(carbonToNitrogen?.high).toBeCloseTo(80, 6);
    expect(moisturePct).toEqual({ low: 28, usual: 38, high: 45 });
  });

  it('where none is published are as wide as the middle of those that are', () => {
    for (const figure of ['carbonToNitrogen', 'densityKgPerM3', 'moisturePctWet'] as const) {
      const rows = feedstocks.flatMap((row) => row[figure] ?? []).filter(({ low, high }) => low ?? high);
      const stray = (end: 'low' | 'high'): number =>
        median(
          rows.map((row) =>
            figure === 'moisturePctWet' ? (row[end] ?? row.usual) - row.usual : (row[end] ?? row.usual) / row.usual,
          ),
        );
      const digits = figure === 'moisturePctWet' ? 0 : 2;
      expect(stray('low').toFixed(digits)).toBe(UNPUBLISHED_SPREAD[figure].low.toFixed(digits));
      expect(Math.abs(stray('high') - UNPUBLISHED_SPREAD[figure].high)).toBeLessThan(digits === 0 ? 0.6 : 0.006);
    }
  });

  it('never leave what can be', () => {
    const span = spanOf({ ...named('dry-leaves'), moisturePctWet: { usual: 93 } }, 'moisturePctWet');
    expect(span).toEqual({ low: 83, usual: 93, high: 95 });
  });
});

describe('what has no ratio', () => {
  it('is in the pile and not in the arithmetic', () => {
    const mix = mixOf([litres('dry-leaves', 100), litres('eggshells', 2), litres('tea', 3)]);
    expect(mix.leftOut.map(({ material }) => material.id)).toEqual(['eggshells', 'tea_leaves_bags']);
    expect(mix.carbonToNitrogen?.usual).toBeCloseTo(54, 6);
  });

  it('alone gives no ratio at all', () => {
    expect(mixOf([litres('eggshells', 2)]).carbonToNitrogen).toBeUndefined();
    expect(mixOf([]).moisturePct).toBeUndefined();
  });
});

it('water makes a mix wetter and no richer', () => {
  const portions = [litres('straw', 200), litres('grass-clippings', 60)];
  const [dry, wet] = [mixOf(portions), mixOf(portions, 20)];
  expect(wet.moisturePct?.usual).toBeGreaterThan(dry.moisturePct?.usual ?? 100);
  expect(wet.carbonToNitrogen).toEqual(dry.carbonToNitrogen);
});

it('a figure stands good, workable, too low or too high, the ends included', () => {
  const [good, workable] = [
    { low: 25, high: 30 },
    { low: 20, high: 40 },
  ];
  const standings = [19, 20, 24.9, 25, 30, 30.1, 40, 41].map((value) => standingOf(value, good, workable));
  expect(standings).toEqual(['too low', 'will do', 'will do', 'good', 'good', 'will do', 'will do', 'too high']);
});

describe('layers', () => {
  it('lie browns, greens, browns, and add up to the height', () => {
    const mix = mixOf([litres('dry-leaves', 400), litres('grass-clippings', 200)]);
    const layers = layersOf(mix, { floorM2: 1, litres: 1000 });
    // 20 cm of grass over a square metre: four layers of 5 cm; 40 cm of leaves in the five around them.
    expect(layers).toMatchObject({ greens: 4, greensCm: 5, browns: 5, brownsCm: 8, heightCm: 60, overL: 0 });
  });

  it('stay thin enough for greens to breathe and for browns to be reached', () => {
    for (const [browns, greens] of [
      [2000, 10],
      [50, 700],
      [1, 1],
    ] as const) {
      const mix = mixOf([litres('straw', browns), litres('kitchen-scraps', greens)]);
      const layers = layersOf(mix, roomOf(760));
      expect(layers?.greensCm).toBeLessThanOrEqual(5.0001);
      expect(layers?.brownsCm).toBeLessThanOrEqual(15.0001);
    }
  });

  it('say how much is over where the bin is too small', () => {
    const mix = mixOf([litres('dry-leaves', 600), litres('grass-clippings', 300)]);
    expect(layersOf(mix, roomOf(760))?.overL).toBeCloseTo(140, 6);
  });

  it('need both kinds', () => {
    expect(layersOf(mixOf([litres('dry-leaves', 100)]), roomOf(760))).toBeUndefined();
  });
});
