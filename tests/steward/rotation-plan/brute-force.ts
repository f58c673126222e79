/**
 * Every plan there is for a small problem, tried one by one: slow and sure.
 */
import { brokenRules } from '../../../src/practices/rotation-plan/broken.ts';
import { costOf } from '../../../src/practices/rotation-plan/cost.ts';
import { isHard } from '../../../src/practices/rotation-plan/looked-at.ts';
import type { Placement, PlanBed, PlanWish, RotationProblem } from '../../../src/practices/rotation-plan/problem.ts';
import { openWishes } from '../../../src/practices/rotation-plan/wishes.ts';

/** Pieces that are tried, m²: problems for it are made of halves. */
const STEP_M2 = 0.5;

/** Whether a plan breaks no rule that may not break, the past and the gardener's own doings among themselves aside. */
export function isAllowed(problem: RotationProblem, placements: readonly Placement[]): boolean {
  const own = brokenRules(problem, []).filter(isHard).length;
  return brokenRules(problem, placements).filter(isHard).length === own;
}

/** The least cost of any allowed plan. */
export function leastCost(problem: RotationProblem): number {
  let least = Number.POSITIVE_INFINITY;
  for (const plan of plans(problem)) {
    if (isAllowed(problem, plan)) least = Math.min(least, costOf(problem, plan));
  }
  return least;
}

function* plans(problem: RotationProblem): Generator<Placement[]> {
  const choices = openWishes(problem).flatMap((wish) => problem.beds.map((bed) => piecesOf(wish, bed)));
  const at = choices.map(() => 0);
  for (;;) {
    const plan = at.flatMap((pick, index) => choices[index]?.[pick] ?? []);
    if (fits(problem, plan)) yield plan;
    const turn = at.findIndex((pick, index) => pick + 1 < (choices[index]?.length ?? 0));
    if (turn < 0) return;
    at.fill(0, 0, turn);
    at[turn] = (at[turn] ?? 0) + 1;
  }
}

function piecesOf({ cropId, season, amount }: PlanWish, bed: PlanBed): (Placement | undefined)[] {
  const place = (areaM2: number): Placement => ({ bedId: bed.id, season, cropId, areaM2 });
  if ('beds' in amount) return [undefined, place(bed.areaM2)];
  const steps = Math.floor(Math.min(bed.areaM2, amount.areaM2) / STEP_M2);
  return [undefined, ...Array.from({ length: steps }, (_, step) => place((step + 1) * STEP_M2))];
}

function fits({ beds }: RotationProblem, plan: readonly Placement[]): boolean {
  const held = new Map<string, number>();
  for (const { bedId, season, areaM2 } of plan) {
    const key = `${bedId} ${season}`;
    held.set(key, (held.get(key) ?? 0) + areaM2);
  }
  return beds.every((bed) => [...held].every(([key, areaM2]) => !key.startsWith(`${bed.id} `) || areaM2 <= bed.areaM2));
}
