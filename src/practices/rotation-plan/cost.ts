/**
 * What a plan costs by the weights: the least is the best.
 */
import { brokenRules, unknownPasts } from './broken.ts';
import type { Placement, PlanWish, RotationProblem } from './problem.ts';
import { UNKNOWN_PAST, UNMET } from './rules.ts';
import { bedsFor, lacking, wishesMet } from './wishes.ts';

/** The weight of every rule broken in the seasons planned, of what is not known and of what is not given. */
export function costOf(problem: RotationProblem, placements: readonly Placement[]): number {
  const broken = brokenRules(problem, placements).reduce((sum, { weight = 0 }) => sum + weight, 0);
  const unmet = wishesMet(problem, placements).map((met) => lacking(met) * unmetCost(problem, met.wish));
  const unknown = UNKNOWN_PAST * unknownPasts(problem, placements).length;
  return broken + unknown + unmet.reduce((sum, each) => sum + each, 0);
}

/** What a wish counts of which nothing is given. */
export function unmetCost(problem: RotationProblem, { amount }: PlanWish): number {
  return UNMET.wish + UNMET.bed * bedsFor(problem, [amount]);
}
