import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedstocks } from '../../../../src/handbook/feedstocks.ts';
import { leastAddition } from '../../../../src/practices/composting/mix/least-addition.ts';
import { mixOf } from '../../../../src/practices/composting/mix/mix.ts';
import { isReckoned, type Portion } from '../../../../src/practices/composting/mix/portion.ts';
import { GOOD_START, WILL_DO } from '../../../../src/practices/composting/mix/target.ts';
import { type AtHand, whatToAdd } from '../../../../src/practices/composting/mix/what-to-add.ts';
import { runs } from '../../../runs.ts';
import { litres, named } from './stuff.ts';

const have = (...words: string[]): AtHand[] => words.map((word) => ({ material: named(word) }));
const added = (answer: ReturnType<typeof whatToAdd>) =>
  answer.reach === 'not' ? answer.hindrance : answer.add.map(({ material }) => material.id);

/** An answer that reaches something. */
function reached(answer: ReturnType<typeof whatToAdd>) {
  if (answer.reach === 'not') throw new Error(`It stays ${answer.hindrance}.`);
  return answer;
}

describe('what a mix wants', () => {
  it('of grass alone is browns: dry leaves bring it to what will do, as wet as it may be', () => {
    const { reach, add, after } = reached(whatToAdd([litres('grass-clippings', 100)], have('dry-leaves')));
    expect(reach).toBe('will do');
    expect(add.map(({ material }) => material.id)).toEqual(['leaves_dry_loose']);
    expect(after.moisturePct?.usual).toBeCloseTo(60, 6);
    expect(after.brownsL / after.greensL).toBeGreaterThan(1.5);
    expect(after.brownsL / after.greensL).toBeLessThan(2.5);
  });

  it('of leaves alone is greens, to 30 to 1', () => {
    const { reach, add, after } = reached(whatToAdd([litres('dry-leaves', 300)], have('coffee-grounds')));
    expect(reach).toBe('good');
    expect(add.map(({ material }) => material.id)).toEqual(['coffee_grounds']);
    expect(after.carbonToNitrogen?.usual).toBeCloseTo(30, 6);
  });

  it('of straw and dry hay is water, to 55 percent', () => {
    const { waterL, after } = reached(whatToAdd([litres('straw', 200), litres('legume-hay', 300)]));
    expect(waterL).toBeGreaterThan(0);
    expect(after.moisturePct?.usual).toBeCloseTo(55, 6);
  });

  it('is nothing where it is good already', () => {
    const portions = [litres('dry-leaves', 300), litres('grass-clippings', 40), litres('coffee-grounds', 60)];
    const { add, waterL } = reached(whatToAdd(portions));
    expect(whatToAdd([...portions, ...add])).toMatchObject({ reach: 'good', add: [], waterL });
  });
});

describe('what cannot be reached', () => {
  it('grass with nothing brown there stays too rich, and leaves would mend it', () => {
    const answer = whatToAdd([litres('grass-clippings', 100)], have('kitchen-scraps'));
    expect(answer).toMatchObject({ reach: 'not', hindrance: 'too rich' });
    const mended = answer.reach === 'not' ? answer.instead?.add : [];
    expect(mended?.map(({ material }) => material.class)).toContain('brown');
  });

  it('leaves with only more leaves stay too brown', () => {
    expect(whatToAdd([litres('dry-leaves', 100)])).toMatchObject({ reach: 'not', hindrance: 'too brown' });
  });

  it('three litres of leaves do not mend a hundred of grass', () => {
    const few: AtHand[] = [{ material: named('dry-leaves'), most: { litres: 3 } }];
    expect(whatToAdd([litres('grass-clippings', 100)], few)).toMatchObject({ reach: 'not' });
  });

  it('wet manure and wet scraps stay too wet though their ratio is right', () => {
    const answer = whatToAdd([litres('cow-manure', 100), litres('fruit-scraps', 100)]);
    expect(answer).toMatchObject({ reach: 'not', hindrance: 'too wet' });
    // It could be had with some nineteen hundred litres to these two hundred, which is no help to anybody.
    expect(answer).not.toHaveProperty('instead');
  });
});

describe('among several things', () => {
  it('one that does it alone goes before two', () => {
    const answer = whatToAdd([litres('grass-clippings', 100)], have('dry-leaves', 'sawdust', 'cardboard'));
    expect(added(answer)).toHaveLength(1);
  });

  it('what there is little of is filled up with something else', () => {
    const some: AtHand[] = [
      { material: named('dry-leaves'), most: { litres: 60 } },
      { material: named('cardboard'), most: { litres: 60 } },
    ];
    const { add } = reached(whatToAdd([litres('grass-clippings', 100)], some));
    expect(add).toHaveLength(2);
  });
});

const reckoned = feedstocks.filter(isReckoned);
const anyMaterial = fc.constantFrom(...reckoned);
const anyPortion: fc.Arbitrary<Portion> = fc.record({
  material: anyMaterial,
  amount: fc.oneof(
    fc.record({ litres: fc.double({ min: 1, max: 2000, noNaN: true }) }),
    fc.record({ kg: fc.double({ min: 0.5, max: 500, noNaN: true }) }),
  ),
});
const anyAtHand: fc.Arbitrary<AtHand> = fc.record(
  { material: anyMaterial, most: fc.record({ litres: fc.double({ min: 0, max: 1000, noNaN: true }) }) },
  { requiredKeys: ['material'] },
);
const inside = (value: number, { low, high }: { low: number; high: number }): boolean =>
  value >= low - 1e-6 && value <= high + 1e-6;

describe('for any mix and anything at hand', () => {
  it('the answer really reaches the band it names, with no more than is there', () => {
    fc.assert(
      fc.property(
        fc.array(anyPortion, { minLength: 1, maxLength: 4 }),
        fc.uniqueArray(anyAtHand, { maxLength: 4, selector: ({ material }) => material.id }),
        (portions, atHand) => {
          const answer = whatToAdd(portions, atHand);
          if (answer.reach === 'not') return;
          const bands = answer.reach === 'good' ? GOOD_START : WILL_DO;
          const { carbonToNitrogen, moisturePct } = mixOf([...portions, ...answer.add], answer.waterL);
          expect(inside(carbonToNitrogen?.usual ?? 0, bands.carbonToNitrogen)).toBe(true);
          expect(inside(moisturePct?.usual ?? 0, bands.moisturePct)).toBe(true);
          for (const { material, amount } of answer.add) {
            const most = atHand.find((each) => each.material === material)?.most;
            const given = 'litres' in amount ? amount.litres : Number.NaN;
            expect(given).toBeGreaterThanOrEqual(0);
            if (most && 'litres' in most) expect(given).toBeLessThanOrEqual(most.litres * (1 + 1e-6) + 1e-6);
          }
        },
      ),
      { numRuns: runs(100, 2000) },
    );
  });

  it('what it calls out of reach no amounts drawn by chance reach either', () => {
    fc.assert(
      fc.property(
        fc.array(anyPortion, { minLength: 1, maxLength: 3 }),
        fc.uniqueArray(anyMaterial, { minLength: 1, maxLength: 3, selector: ({ id }) => id }),
        fc.array(fc.array(fc.double({ min: 0, max: 3000, noNaN: true }), { minLength: 4, maxLength: 4 }), {
          minLength: 20,
          maxLength: 20,
        }),
        (portions, materials, draws) => {
          const answer = whatToAdd(
            portions,
            materials.map((material) => ({ material })),
          );
          if (answer.reach !== 'not') return;
          for (const draw of draws) {
            const more = materials.map((material, at) => ({ material, amount: { litres: draw[at] ?? 0 } }));
            const { carbonToNitrogen, moisturePct } = mixOf([...portions, ...more], draw[3]);
            const both =
              inside(carbonToNitrogen?.usual ?? 0, WILL_DO.carbonToNitrogen) &&
              inside(moisturePct?.usual ?? 0, WILL_DO.moisturePct);
            expect(both).toBe(false);
          }
        },
      ),
      { numRuns: runs(50, 1000) },
    );
  });
});

describe('the least addition', () => {
  it('is found at a corner', () => {
    // At least 4 of both together, the second no more than 1, the first twice as dear.
    expect(
      leastAddition(
        [2, 1],
        [
          { of: [-1, -1], most: -4 },
          { of: [0, 1], most: 1 },
        ],
      ),
    ).toEqual([3, 1]);
  });

  it('is nothing where limits contradict each other', () => {
    expect(
      leastAddition(
        [1],
        [
          { of: [1], most: 1 },
          { of: [-1], most: -2 },
        ],
      ),
    ).toBeUndefined();
  });

  it('of nothing is nothing, where that satisfies', () => {
    expect(leastAddition([], [{ of: [], most: 0 }])).toEqual([]);
    expect(leastAddition([], [{ of: [], most: -1 }])).toBeUndefined();
  });
});
