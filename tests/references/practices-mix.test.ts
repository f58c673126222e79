/**
 * The arithmetic of a compost mix against published worked examples. Inputs are the sources' own, not the handbook's.
 */
import { describe, expect, it } from 'vitest';
import { feedstockById } from '../../src/handbook/feedstocks.ts';
import type { Feedstock } from '../../src/handbook/shapes/feedstock.ts';
import { mixOf } from '../../src/practices/composting/mix/mix.ts';
import { contentsOf, makeupOf } from '../../src/practices/composting/mix/portion.ts';
import { GOOD_START, WILL_DO } from '../../src/practices/composting/mix/target.ts';
import { whatToAdd } from '../../src/practices/composting/mix/what-to-add.ts';
import { stuff } from '../practices/composting/mix/stuff.ts';

const ANY_RATIO = { low: 1, usual: 500, high: 1000 };
const exactly = (value: number) => ({ low: value, usual: value, high: value });
const ANY_WATER = { low: 0, usual: 50, high: 100 };
const kg = (material: Feedstock, amount: number) => ({ material, amount: { kg: amount } });

// Richard & Trautmann, Cornell (compost:S4, compost:S5): the two materials of their examples.
const grass = stuff('grass', 77, 45, 2.4);
const leaves = stuff('leaves', 35, 50, 0.75);
// Magdoff & van Es, after Cornell (compost:S57; the box from memory).
const scraps = stuff('food scraps', 80, 42, 5);

/** Kilograms of each thing added. */
function addedKg(answer: ReturnType<typeof whatToAdd>): number[] {
  if (answer.reach === 'not') return [];
  return answer.add.map(({ material, amount }) => contentsOf(amount, makeupOf(material)).wetKg);
}

describe('Cornell’s worked examples', () => {
  it('ten kilograms of grass at 77 % water come down to 60 % with 6.8 kg of leaves at 35 % (compost:S4)', () => {
    const target = { carbonToNitrogen: { low: 1, usual: 36.7, high: 1000 }, moisturePct: exactly(60) };
    const [leavesKg] = addedKg(whatToAdd([kg(grass, 10)], [{ material: leaves }], target));
    expect(leavesKg).toBeCloseTo(6.8, 1);
  });

  it('ten kilograms of grass come to 30 to 1 with 3.5 kg of leaves (compost:S5, recalled)', () => {
    const target = { carbonToNitrogen: exactly(30), moisturePct: ANY_WATER };
    const [leavesKg = 0] = addedKg(whatToAdd([kg(grass, 10)], [{ material: leaves }], target));
    expect(leavesKg).toBeCloseTo(3.474, 3);
    expect(leavesKg.toFixed(1)).toBe('3.5');
  });

  it('neither amount does both: 60 % goes with 36.7 to 1, and 30 to 1 with 66 % (worked out from the two above)', () => {
    const dryEnough = mixOf([kg(grass, 10), kg(leaves, 6.8)]);
    expect(dryEnough.moisturePct?.usual).toBeCloseTo(60, 0);
    expect(dryEnough.carbonToNitrogen?.usual).toBeCloseTo(36.7, 1);
    expect(mixOf([kg(grass, 10), kg(leaves, 3.474)]).moisturePct?.usual).toBeCloseTo(66, 0);
    const both = { carbonToNitrogen: exactly(30), moisturePct: exactly(60) };
    const answer = whatToAdd([kg(grass, 10)], [{ material: leaves }], both);
    expect(answer).not.toMatchObject({ reach: 'good' });
  });

  it('weights of cardboard and sawdust are those of the metric copy of the table', () => {
    // Cardboard: 259 lb/yd³ (compost:S1) is printed as 154 kg/m³ in the metric copy (compost:S2).
    expect(feedstockById('cardboard_corrugated').densityKgPerM3?.usual).toBe(154);
    // Sawdust: 350–450 lb/yd³ is printed as 207–267 kg/m³.
    expect(feedstockById('sawdust').densityKgPerM3).toMatchObject({ low: 207, high: 267 });
  });
});

describe('three materials', () => {
  it('100 lb grass, 130 lb leaves and 80 lb food scraps make about 60 % and 30 to 1 (compost:S57, box recalled)', () => {
    const { moisturePct, carbonToNitrogen } = mixOf([kg(grass, 100), kg(leaves, 130), kg(scraps, 80)]);
    expect(moisturePct?.usual).toBeCloseTo(60.2, 1);
    expect(carbonToNitrogen?.usual).toBeCloseTo(29.9, 1);
  });

  it('ten kilograms of grass meet 60 % and 30 to 1 with 13.3 kg of leaves and 8.1 kg of scraps (by hand, agrees)', () => {
    const both = { carbonToNitrogen: exactly(30), moisturePct: exactly(60) };
    const answer = whatToAdd([kg(grass, 10)], [{ material: leaves }, { material: scraps }], both);
    const [leavesKg, scrapsKg] = addedKg(answer);
    expect(leavesKg).toBeCloseTo(13.3, 1);
    expect(scrapsKg).toBeCloseTo(8.1, 1);
  });

  it.each([
    [20, 0.52],
    [25, 0.79],
    [30, 1.07],
  ])(
    'layer manure reaches %d to 1 with %d lb of sawdust a pound (inputs recalled from compost:S1)',
    (goal, sawdust) => {
      const manure = stuff('manure', 70, 60, 6);
      const wood = stuff('sawdust', 35, 55, 0.11);
      const target = { carbonToNitrogen: exactly(goal), moisturePct: ANY_WATER };
      const [added] = addedKg(whatToAdd([kg(manure, 1)], [{ material: wood }], target));
      expect(added).toBeCloseTo(sawdust, 2);
    },
  );
});

describe('what must not be done: averaging ratios', () => {
  // NC DENR's slides (compost:S46) take food scraps 15, grass 17 and leaves 60, a part each, for "31".
  const parts = [stuff('scraps', 80, 42, 2.8), stuff('grass', 77, 45, 45 / 17), stuff('leaves', 35, 50, 50 / 60)];
  const averaged = Math.round((15 + 17 + 60) / 3);

  it('the published average is 31, and equal weights of those three come to 30 only by luck', () => {
    expect(averaged).toBe(31);
    const mix = mixOf(parts.map((material) => kg(material, 1))).carbonToNitrogen?.usual ?? 0;
    // Carbon 0.084 + 0.1035 + 0.325 over nitrogen 0.0056 + 0.00609 + 0.00542, by hand.
    expect(mix).toBeCloseTo(29.96, 1);
  });

  it('by volume it is further off: a litre of leaves weighs a fraction of a litre of scraps', () => {
    const volume = mixOf(
      ['kitchen_vegetable_scraps', 'grass_clippings_fresh_loose', 'leaves_dry_loose'].map((id) => ({
        material: feedstockById(id),
        amount: { litres: 100 },
      })),
    ).carbonToNitrogen?.usual;
    // Averaging the handbook's own 15, 17 and 54 would say 28.7. By hand: carbon 2.396 + 1.685 + 3.586 kg over
    // nitrogen 0.160 + 0.099 + 0.066 kg.
    expect(volume).toBeCloseTo(23.6, 0);
    expect(volume).toBeLessThan(26);
  });
});

describe('bands and identities', () => {
  it('carbon is nitrogen times the ratio (compost:S5)', () => {
    const { carbonKg, nitrogenKg, dryKg } = contentsOf({ kg: 100 }, makeupOf(grass));
    expect(carbonKg / dryKg).toBeCloseTo(0.45, 6);
    expect(nitrogenKg / dryKg).toBeCloseTo(0.024, 6);
  });

  it.each([
    // USDA Central Great Plains (compost:S29): carbon 40 % of dry matter.
    [20, 2],
    [50, 0.8],
    [100, 0.4],
  ])('at %d to 1 and 40 percent carbon, nitrogen is %d percent', (ratio, percent) => {
    const { nitrogenKg, dryKg } = contentsOf({ kg: 1 }, makeupOf(stuff('residue', 10, 40, 40 / ratio)));
    expect((100 * nitrogenKg) / dryKg).toBeCloseTo(percent, 6);
  });

  it('a good start is 25 to 35 to 1 (compost:S14) and 50 to 60 % water, 20 to 40 and 45 to 65 will do (compost:S13)', () => {
    expect(GOOD_START.carbonToNitrogen).toMatchObject({ low: 25, high: 35 });
    expect(GOOD_START.moisturePct).toMatchObject({ low: 50, high: 60 });
    expect(WILL_DO).toEqual({ carbonToNitrogen: { low: 20, high: 40 }, moisturePct: { low: 45, high: 65 } });
  });

  it('any ratio at all is met by adding nothing', () => {
    expect(whatToAdd([kg(grass, 10)], [], { carbonToNitrogen: ANY_RATIO, moisturePct: ANY_WATER })).toMatchObject({
      reach: 'good',
      add: [],
    });
  });
});
