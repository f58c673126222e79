/**
 * A rotation proposed for a garden: the plan, what it breaks, what is not known, and why a wish cannot be met.
 */
import type { PracticeInput } from '../../practices/practice.ts';
import { brokenRules, type UnknownPast, unknownPasts } from '../../practices/rotation-plan/broken.ts';
import { gardenProblem, type RotationAsk } from '../../practices/rotation-plan/garden-problem.ts';
import type { BrokenRule } from '../../practices/rotation-plan/looked-at.ts';
import { lpText } from '../../practices/rotation-plan/lp-text.ts';
import type { Placement, RotationProblem } from '../../practices/rotation-plan/problem.ts';
import { type BestPlanModel, bestPlanModel } from '../../practices/rotation-plan/rotation-models.ts';
import { isMet, lacking, type WishMet, wishesMet } from '../../practices/rotation-plan/wishes.ts';
import { type Solver, startSolver } from '../solver/solver.ts';
import { betweenTable } from './between.ts';
import { type Conflict, conflictsOf } from './conflicts.ts';
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

/** Proposes a rotation for the wishes of a garden. */
export async function proposeRotation(input: PracticeInput, ask: RotationAsk): Promise<RotationProposal> {
  const bare = gardenProblem(input, ask);
  const solver = startSolver();
  try {
    const proposal = await proposalFor({ ...bare, between: betweenTable(input, bare) }, solver);
    return { ...proposal, placements: withDates(input, proposal.placements) };
  } finally {
    await solver.close();
  }
}

/** The proposal for a problem that is all worked out. */
export async function proposalFor(problem: RotationProblem, solver: Solver): Promise<RotationProposal> {
  const { placements, found } = await planFor(problem, solver);
  const wishes = wishesMet(problem, placements);
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

/** Choices up to which a plan is sought whole, and proven. Beyond it goes season by season. House default. */
const MOST_AT_ONCE = 120;

interface Found {
  placements: readonly Placement[];
  found: RotationProposal['found'];
}

async function planFor(problem: RotationProblem, solver: Solver): Promise<Found> {
  const best = bestPlanModel(problem);
  if (best.choices === 0) return { placements: [], found: 'best' };
  if (best.choices > MOST_AT_ONCE && problem.seasons.length > 1) return seasonBySeason(problem, best, solver);
  const solved = await solver.solve(lpText(best.model));
  if (!('values' in solved)) return { placements: [], found: 'best found' };
  return { placements: best.read(solved.values), found: solved.found };
}

/** Settles one season after another, each with an eye to the next: near the best, and not proven. */
async function seasonBySeason({ seasons }: RotationProblem, best: BestPlanModel, solver: Solver): Promise<Found> {
  let placements: Placement[] = [];
  for (const season of seasons) {
    const solved = await solver.solve(lpText(best.stage(season, placements)));
    if (!('values' in solved)) continue;
    placements = best.read(solved.values).filter((place) => place.season <= season);
  }
  return { placements, found: 'best found' };
}
