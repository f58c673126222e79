/**
 * The best plan for a problem: sought whole where that is small enough, else searched and then bettered part by part.
 */
import { costOf } from '../../practices/rotation-plan/cost.ts';
import { filled } from '../../practices/rotation-plan/filled.ts';
import { lpText } from '../../practices/rotation-plan/lp-text.ts';
import { partsOf } from '../../practices/rotation-plan/parts.ts';
import type { Placement, RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { type BestPlanModel, bestPlanModel } from '../../practices/rotation-plan/rotation-models.ts';
import { searchPlan } from '../../practices/rotation-plan/search.ts';
import { withSecondCrops } from '../../practices/rotation-plan/second-crops.ts';
import { inSetOrder } from '../../practices/rotation-plan/set-order.ts';
import { type Say, unsaid } from '../long-work/say.ts';
import type { Solver } from '../solver/solver.ts';

/** A plan, and whether it is proven that none is better. */
export interface FoundPlan {
  placements: readonly Placement[];
  found: 'best' | 'best found';
}

/** Choices up to which a plan is sought whole, and proven. House default. */
const MOST_AT_ONCE = 120;
/** A plan is better by more than sums of weights may differ by. */
const SMALLEST = 1e-6;

/** The best plan, in the order of the garden's beds whatever that is: alike beds are told apart by it and by nothing else. */
export async function bestPlan(problem: RotationProblem, solver: Solver, say: Say = unsaid): Promise<FoundPlan> {
  const ordered = inSetOrder(problem);
  await say('Looking for the best place for each crop', 0.3);
  const first = await inOrder(ordered, solver, say);
  const placements = withSecondCrops(ordered, first.placements);
  const found = placements === first.placements ? first.found : 'best found';
  const inBeds = problem.beds.flatMap(({ id }) => placements.filter(({ bedId }) => bedId === id));
  return { placements: inBeds, found };
}

async function inOrder(problem: RotationProblem, solver: Solver, say: Say): Promise<FoundPlan> {
  const best = bestPlanModel(problem);
  if (best.choices === 0) return { placements: [], found: 'best' };
  const search = () => searched(problem, best, solver, say);
  if (best.choices > MOST_AT_ONCE) return { placements: await search(), found: 'best found' };
  const solved = await solver.solve(lpText(best.model));
  const whole = 'values' in solved ? best.read(solved.values) : undefined;
  if (whole !== undefined && solved.found === 'best') return { placements: whole, found: 'best' };
  return { placements: better(problem, await search(), whole), found: 'best found' };
}

function better(problem: RotationProblem, plan: readonly Placement[], other: readonly Placement[] | undefined) {
  return other !== undefined && costOf(problem, other) < costOf(problem, plan) - SMALLEST ? other : plan;
}

/** A plan searched for, and then every part of it placed anew, once. */
async function searched(
  problem: RotationProblem,
  best: BestPlanModel,
  solver: Solver,
  say: Say,
): Promise<readonly Placement[]> {
  let plan: readonly Placement[] = filled(problem, await withPauses(searchPlan(problem)));
  const parts = partsOf(problem, MOST_AT_ONCE);
  for (const [at, part] of parts.entries()) {
    await say(`Bettering the plan, part ${at + 1} of ${parts.length}`, 0.5 + (0.3 * at) / parts.length);
    const { model, read } = best.around(plan, part);
    const solved = await solver.solve(lpText(model), 'rough');
    if ('values' in solved) plan = better(problem, plan, read(solved.values));
  }
  return plan;
}

/** Runs a search to its end, with other work let in between. */
async function withPauses<Result>(search: Generator<void, Result>): Promise<Result> {
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
    await new Promise((resolve) => setImmediate(resolve));
  }
}
