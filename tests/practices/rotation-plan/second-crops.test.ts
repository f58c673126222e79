import { describe, expect, it } from 'vitest';
import { brokenRules } from '../../../src/practices/rotation-plan/broken.ts';
import { isHard } from '../../../src/practices/rotation-plan/looked-at.ts';
import type { Between, Placement, PlanBed, PlanWish } from '../../../src/practices/rotation-plan/problem.ts';
import { withSecondCrops } from '../../../src/practices/rotation-plan/second-crops.ts';
import { carried, placed, planBed, rotationProblem, wish } from './problems.ts';

const FOLLOWS: Between = { legume: 'unknown', stillStands: false, follows: 30 };
const between = { 'pea>kale': FOLLOWS, 'radish>kale': FOLLOWS, 'garlic>broccoli': FOLLOWS };

/** The plan of one bed of 3 m² in words, once second crops found their room. */
function second(wishes: PlanWish[], plan: Placement[], parts: Partial<PlanBed> = {}): string[] {
  const problem = rotationProblem({ beds: [planBed('a', parts)], wishes, between });
  const full = withSecondCrops(problem, plan);
  expect(brokenRules(problem, full).filter((rule) => isHard(rule) && rule.how === 'proposed')).toEqual([]);
  return full.map(({ cropId, areaM2, after }) => `${cropId} ${areaM2}${after === undefined ? '' : ` after ${after}`}`);
}

describe('a second crop in one season', () => {
  const [peas, kale] = [wish('pea', { areaM2: 2 }), wish('kale', { areaM2: 2 })];

  it('kale goes in after peas where it found no room', () => {
    const plan = [placed('a', 'pea', 2027, 2)];
    expect(second([peas, kale], plan, { areaM2: 2 })).toEqual(['pea 2', 'kale 2 after pea']);
  });

  it('peas go in ahead of kale that has its room already', () => {
    const plan = [placed('a', 'kale', 2027, 2)];
    expect(second([peas, kale], plan, { areaM2: 2 })).toEqual(['kale 2 after pea', 'pea 2']);
  });

  it('a whole bed of peas goes in ahead of kale that is alone in it, not where another shares it', () => {
    const bed = [wish('pea', { beds: 1 }), kale];
    expect(second(bed, [placed('a', 'kale', 2027, 2)])).toEqual(['kale 2 after pea', 'pea 3']);
    const shared = [placed('a', 'kale', 2027, 2), placed('a', 'carrot', 2027, 1)];
    expect(second([...bed, wish('carrot', { areaM2: 1 })], shared)).toEqual(['kale 2', 'carrot 1']);
  });

  it('goes in the order that leaves the more days to spare', () => {
    const both = { ...between, 'kale>pea': { ...FOLLOWS, follows: 5 } };
    const problem = rotationProblem({ beds: [planBed('a', { areaM2: 2 })], wishes: [peas, kale], between: both });
    for (const cropId of ['pea', 'kale']) {
      const plan = withSecondCrops(problem, [placed('a', cropId, 2027, 2)]);
      expect(plan.find(({ after }) => after !== undefined)).toMatchObject({ cropId: 'kale', after: 'pea' });
    }
  });

  it('takes no more ground than the first leaves', () => {
    const plan = [placed('a', 'pea', 2027, 1), placed('a', 'carrot', 2027, 2)];
    expect(second([wish('pea', { areaM2: 1 }), wish('carrot', { areaM2: 2 }), kale], plan)).toContain(
      'kale 1 after pea',
    );
  });

  it('stays out where its family has to wait, and behind its own kin', () => {
    const plan = [placed('a', 'pea')];
    expect(second([peas, kale], plan, { carried: carried({ 2025: 'cabbage' }) })).toEqual(['pea 3']);
    expect(second([wish('radish', { areaM2: 3 }), kale], [placed('a', 'radish')])).toEqual(['radish 3']);
  });

  it('stays out where time is short, or where nothing is lacking', () => {
    expect(second([wish('tomato', { areaM2: 3 }), kale], [placed('a', 'tomato')])).toEqual(['tomato 3']);
    expect(second([peas], [placed('a', 'pea', 2027, 2)])).toEqual(['pea 2']);
  });

  it('is told as hungry behind anything but a legume', () => {
    const wishes = [wish('garlic', { areaM2: 3 }), wish('broccoli', { areaM2: 3 })];
    const problem = rotationProblem({ beds: [planBed('a')], wishes, between });
    const plan = withSecondCrops(problem, [placed('a', 'garlic')]);
    expect(brokenRules(problem, plan).map(({ reason }) => reason.rule)).toEqual(['rotation-plan.legume-first']);
  });

  it('keeps the next autumn for itself: no garlic behind it', () => {
    const beds = [planBed('a')];
    const problem = rotationProblem({ beds, seasons: [2027, 2028], wishes: [peas, kale], between });
    const plan = [placed('a', 'pea', 2027, 2), placed('a', 'garlic', 2028)];
    expect(withSecondCrops(problem, plan)).toEqual(plan);
  });
});

describe('a cover with a legume', () => {
  const fits = { 'leek>tomato': { legume: { coverId: 'hairy_vetch' }, stillStands: false } } as const;
  const rulesFor = (past: Readonly<Record<number, string>>) => {
    const beds = [planBed('a', { carried: carried(past) })];
    return brokenRules(rotationProblem({ beds, between: fits }), [placed('a', 'tomato')]).map(
      ({ reason }) => reason.rule,
    );
  };

  it('counts as a legume: it waits three years for peas and beans (root rots, veg:V62)', () => {
    expect(rulesFor({ 2026: 'leek' })).toEqual([]);
    expect(rulesFor({ 2025: 'pea', 2026: 'leek' })).toEqual(['rotation-plan.legume-first']);
    expect(rulesFor({ 2024: 'pea', 2026: 'leek' })).toEqual([]);
  });
});
