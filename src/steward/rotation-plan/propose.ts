/**
 * A rotation proposed for a garden: the plan, what it breaks, what is not known, and why a wish cannot be met.
 */
import type { PracticeInput } from '../../practices/practice.ts';
import { brokenRules, type UnknownPast, unknownPasts } from '../../practices/rotation-plan/broken.ts';
import { gardenProblem, type RotationAsk } from '../../practices/rotation-plan/garden-problem.ts';
import type { BrokenRule } from '../../practices/rotation-plan/looked-at.ts';
import type { RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { isMet, lacking, type WishMet, wishesMet } from '../../practices/rotation-plan/wishes.ts';
import { type Say, unsaid } from '../long-work/say.ts';
import { type Solver, startSolver } from '../solver/solver.ts';
import { bestPlan } from './best-plan.ts';
import { betweenTable } from './between.ts';
import { type Conflict, conflictsOf } from './conflicts.ts';
import { withOpenDays } from './open-days.ts';
import { type DatedPlacement, withDates } from './placement-dates.ts';

/** A rotation proposed: beds by seasons, fit to be shown. */
export interface RotationProposal {
  problem: RotationProblem;
  /** With their days, where the climate tells them. */
  placements: readonly DatedPlacement[];
  /** Whether it is proven that no plan is better, but for hair's breadths. */
  found: 'best' | 'best found';
  broken: readonly BrokenRule[];
  unknown: readonly UnknownPast[];
  wishes: readonly WishMet[];
  conflicts: readonly Conflict[];
}

/** Proposes a rotation for the wishes of a garden, and says how far it is. */
export async function proposeRotation(input: PracticeInput, ask: RotationAsk, say = unsaid): Promise<RotationProposal> {
  await say('Looking at every bed, wish and season', 0.05);
  const bare = withOpenDays(input, ask, gardenProblem(input, ask));
  const solver = startSolver();
  try {
    await say('Working out which crop can follow which', 0.1);
    const proposal = await proposalFor({ ...bare, between: betweenTable(input, bare) }, solver, say);
    await say('Finding the days', 0.95);
    return { ...proposal, placements: withDates(input, proposal.placements) };
  } finally {
    await solver.close();
  }
}

/** The proposal for a problem that is all worked out. */
export async function proposalFor(
  problem: RotationProblem,
  solver: Solver,
  say: Say = unsaid,
): Promise<RotationProposal> {
  const { placements, found } = await bestPlan(problem, solver, say);
  const wishes = wishesMet(problem, placements);
  await say('Finding what stands against the wishes that are not met', 0.8);
  const unmet = wishes.filter((met) => !isMet(met)).sort((a, b) => lacking(b) - lacking(a));
  return {
    problem,
    placements,
    found,
    broken: brokenRules(problem, placements),
    unknown: unknownPasts(problem, placements),
    wishes,
    conflicts:
      unmet.length === 0
        ? []
        : await conflictsOf(
            problem,
            unmet.map(({ wish }) => wish),
            solver,
          ),
  };
}
