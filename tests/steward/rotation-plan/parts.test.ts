import { afterAll, beforeAll, expect, it } from 'vitest';
import { filled } from '../../../src/practices/rotation-plan/filled.ts';
import { lpText } from '../../../src/practices/rotation-plan/lp-text.ts';
import { partsOf } from '../../../src/practices/rotation-plan/parts.ts';
import type { Placement, RotationProblem } from '../../../src/practices/rotation-plan/problem.ts';
import { bestPlanModel } from '../../../src/practices/rotation-plan/rotation-models.ts';
import { searchPlan } from '../../../src/practices/rotation-plan/search.ts';
import { type Solver, startSolver } from '../../../src/steward/solver/solver.ts';
import { planBed, rotationProblem, wish } from '../../practices/rotation-plan/problems.ts';

let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

const LONG_MS = 120_000;
/** Choices that a part may have. */
const MOST = 120;

function fourteenBedsOfTwoKinds(): RotationProblem {
  const beds = Array.from({ length: 14 }, (_, at) => planBed(`b${at}`, at % 2 === 0 ? {} : { areaM2: 2 }));
  const crops = ['tomato', 'kale', 'carrot', 'pea', 'leek', 'potato', 'lettuce-head', 'beet', 'cucumber', 'broccoli'];
  return rotationProblem({ beds, wishes: crops.map((cropId) => wish(cropId, { beds: 1 })) });
}

function searchedIn(problem: RotationProblem): readonly Placement[] {
  const search = searchPlan(problem);
  for (;;) {
    const step = search.next();
    if (step.done === true) return filled(problem, step.value);
  }
}

it(
  'no part of a plan that was searched for is impossible: as it is it can be kept',
  async () => {
    const problem = fourteenBedsOfTwoKinds();
    const plan = searchedIn(problem);
    const best = bestPlanModel(problem);
    const found: string[] = [];
    for (const part of partsOf(problem, MOST)) {
      found.push((await solver.solve(lpText(best.around(plan, part).model), 'rough')).found);
    }
    expect(found).not.toContain('impossible');
    expect(found.length).toBeGreaterThan(5);
  },
  LONG_MS,
);
