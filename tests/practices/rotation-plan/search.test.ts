import { describe, expect, it } from 'vitest';
import { brokenRules } from '../../../src/practices/rotation-plan/broken.ts';
import { costOf } from '../../../src/practices/rotation-plan/cost.ts';
import { isHard } from '../../../src/practices/rotation-plan/looked-at.ts';
import type { Model } from '../../../src/practices/rotation-plan/model.ts';
import { partsOf } from '../../../src/practices/rotation-plan/parts.ts';
import type { Placement, RotationProblem } from '../../../src/practices/rotation-plan/problem.ts';
import { reduced } from '../../../src/practices/rotation-plan/reduced.ts';
import { searchPlan } from '../../../src/practices/rotation-plan/search.ts';
import { cellOf, TriedPlan } from '../../../src/practices/rotation-plan/tried-plan.ts';
import { carried, planBed, rotationProblem, wish } from './problems.ts';

function searched(problem: RotationProblem): Placement[] {
  const search = searchPlan(problem);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

const CROPS = ['tomato', 'potato', 'kale', 'pea', 'carrot', 'garlic'];
const beds = ['a', 'b', 'c', 'd', 'e'].map((id, at) =>
  planBed(id, { areaM2: at % 2 ? 4 : 3, carried: carried({ 2025: CROPS[at] ?? '', 2026: CROPS[at + 1] ?? '' }) }),
);
const seasons: [number, ...number[]] = [2027, 2028];
const wishes = seasons.flatMap((season) =>
  CROPS.map((cropId, at) => wish(cropId, at % 3 ? { areaM2: 2 } : { beds: 1 }, season)),
);
const problem = rotationProblem({ beds, seasons, wishes });

describe('a plan searched for', () => {
  const plan = searched(problem);

  it('breaks no hard rule and meets what there is room for', () => {
    expect(brokenRules(problem, plan).filter((rule) => isHard(rule) && rule.how === 'proposed')).toEqual([]);
    // Three beds are open to tomatoes and potatoes, which want four: one wish for one bed stays open (60 + 20).
    expect(costOf(problem, plan)).toBeCloseTo(80);
  });

  it('is the same when it is searched for again', () => {
    expect(searched(problem)).toEqual(plan);
  });

  it('leaves alone what the past broke', () => {
    const sick = planBed('a', { carried: carried({ 2024: 'tomato', 2025: 'tomato' }) });
    const past = rotationProblem({ beds: [sick], wishes: [wish('carrot', { beds: 1 })] });
    expect(searched(past).map(({ cropId }) => cropId)).toEqual(['carrot']);
  });

  it('of no wishes is empty', () => {
    expect(searched(rotationProblem({ beds }))).toEqual([]);
  });
});

describe('a plan that is tried', () => {
  it('knows what it costs, whatever was put in and taken out again', () => {
    const tried = new TriedPlan(problem);
    tried.put(0, 0, cellOf([{ wish: 4, areaM2: 2 }]));
    tried.put(
      1,
      0,
      cellOf([
        { wish: 4, areaM2: 0.5 },
        { wish: 5, areaM2: 1 },
      ]),
    );
    tried.put(3, 1, cellOf([{ wish: 6, areaM2: 4 }]));
    tried.put(1, 0, cellOf([{ wish: 5, areaM2: 1.5 }]));
    expect(tried.isAllowed()).toBe(true);
    expect(tried.cost()).toBeCloseTo(costOf(problem, tried.placements()));
  });

  it('is not allowed while a hard rule is broken', () => {
    const tried = new TriedPlan(problem);
    // Bed A carried tomatoes in 2025.
    tried.put(0, 0, cellOf([{ wish: 0, areaM2: 3 }]));
    expect(tried.isAllowed()).toBe(false);
    tried.put(0, 0, cellOf([]));
    expect(tried.isAllowed()).toBe(true);
  });
});

describe('the parts placed anew', () => {
  it('cover every bed and every wish, by season and by bed', () => {
    const parts = partsOf(problem, 20);
    for (const bed of beds)
      for (const each of wishes) expect(parts.filter((part) => part(bed, each)).length).toBeGreaterThan(1);
  });
});

describe('a model with columns held', () => {
  const column = { lower: 0, upper: 1, whole: true, cost: 1 };
  const whole: Model = {
    columns: [column, column, { ...column, follows: true }],
    rows: [
      {
        terms: [
          { column: 0, times: 2 },
          { column: 1, times: 1 },
        ],
        most: 2,
      },
      {
        terms: [
          { column: 0, times: 1 },
          { column: 2, times: -1 },
        ],
        most: 0,
      },
    ],
  };

  it('moves what is held to the other side and leaves out rows with nothing to decide', () => {
    const { model, columns } = reduced(whole, new Map([[0, 1]]));
    expect(columns).toEqual([1]);
    expect(model.rows).toEqual([{ terms: [{ column: 0, times: 1 }], most: 0 }]);
  });
});
