/**
 * Second crops: a wish that found no room goes in after a short crop of the same season, or a short one ahead of a crop
 * that can wait. A step of its own after the plan is made, by the same rules.
 */

import { brokenRules } from './broken.ts';
import { costOf } from './cost.ts';
import { isHard } from './looked-at.ts';
import { betweenOf, type Placement, type PlanWish, type RotationProblem, roomIn } from './problem.ts';
import { LEAST_PIECE_M2 } from './rules.ts';
import { isMet, wishesMet } from './wishes.ts';

/**
 * A plan with second crops where they bring more than they break, the best one first, of equals that with the most days to
 * spare; no hard rule breaks for them.
 */
export function withSecondCrops(problem: RotationProblem, placements: readonly Placement[]): readonly Placement[] {
  let plan = placements;
  for (;;) {
    const better = bestOf(problem, plan);
    if (better === undefined) return plan;
    plan = better;
  }
}

/** A plan is better by more than sums of weights may differ by. */
const SMALLEST = 1e-6;

function bestOf(problem: RotationProblem, plan: readonly Placement[]): readonly Placement[] | undefined {
  const hard = hardIn(problem, plan);
  const before = costOf(problem, plan) - SMALLEST;
  const [best] = [...candidates(problem, plan)]
    .map((candidate) => ({ ...candidate, cost: costOf(problem, candidate.plan) }))
    .filter(({ plan: made, cost }) => cost < before && hardIn(problem, made) <= hard)
    .sort((a, b) => (Math.abs(a.cost - b.cost) > SMALLEST ? a.cost - b.cost : b.toSpare - a.toSpare));
  return best?.plan;
}

function hardIn(problem: RotationProblem, plan: readonly Placement[]): number {
  return brokenRules(problem, plan).filter(isHard).length;
}

/** A plan with one second crop more, and the days that leaves to spare. */
interface Candidate {
  plan: readonly Placement[];
  toSpare: number;
}

function* candidates(problem: RotationProblem, plan: readonly Placement[]): Generator<Candidate> {
  for (const met of wishesMet(problem, plan).filter((each) => !isMet(each))) {
    const given = 'areaM2' in met.given ? met.given.areaM2 : 0;
    for (const place of plan.filter(({ season }) => season === met.wish.season)) {
      const isAlone = plan.every(
        (each) => each === place || each.bedId !== place.bedId || each.season !== place.season,
      );
      const piece = pieceBeside(problem, met.wish, given, place, isAlone);
      if (piece === undefined || isPaired(plan, place) || plan.some((each) => isSame(each, piece))) continue;
      const behind = betweenOf(problem, place.cropId, piece.cropId).follows;
      const ahead = betweenOf(problem, piece.cropId, place.cropId).follows;
      const later = { ...place, after: piece.cropId };
      const turned = plan.map((each) => (each === place ? later : each));
      if (behind !== undefined) yield { plan: [...plan, { ...piece, after: place.cropId }], toSpare: behind };
      if (ahead !== undefined) yield { plan: [...turned, piece], toSpare: ahead };
    }
  }
}

/** What of a wish goes on the ground of a crop: where whole beds are wanted the whole of its bed, else what is lacking. */
function pieceBeside(
  { beds }: RotationProblem,
  { cropId, season, amount }: PlanWish,
  given: number,
  { bedId, areaM2 }: Placement,
  isAlone: boolean,
): Placement | undefined {
  const bed = beds.find(({ id }) => id === bedId);
  const piece = { bedId, season, cropId };
  if ('beds' in amount) {
    const isOpen = bed !== undefined && isAlone && roomIn(bed, season) >= bed.areaM2;
    return isOpen ? { ...piece, areaM2: bed.areaM2 } : undefined;
  }
  const most = Math.min(areaM2, Math.round((amount.areaM2 - given) * 100) / 100);
  return most >= Math.min(LEAST_PIECE_M2, amount.areaM2) ? { ...piece, areaM2: most } : undefined;
}

function isPaired(plan: readonly Placement[], { bedId, season, cropId, after }: Placement): boolean {
  const follows = plan.some((each) => each.bedId === bedId && each.season === season && each.after === cropId);
  return after !== undefined || follows;
}

function isSame(a: Placement, b: Placement): boolean {
  return a.bedId === b.bedId && a.season === b.season && a.cropId === b.cropId;
}
