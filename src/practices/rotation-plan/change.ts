/**
 * What comes of a change to a plan: a crop of the gardener's choosing in a bed for a season.
 */
import { brokenIn, brokenInNone } from './broken.ts';
import { costOf } from './cost.ts';
import { type BrokenRule, isHard } from './looked-at.ts';
import type { Placement, RotationProblem } from './problem.ts';

/** What a change to a plan does. */
export interface Change {
  /** Rules that would break and do not now, wherever they break. */
  breaks: readonly BrokenRule[];
  /** Rules that break now and would not. */
  mends: readonly BrokenRule[];
  /** By how much the plan gets worse, wishes included; below nought it gets better. */
  costs: number;
}

/** A crop that could stand in a bed for a season in place of what is proposed there. */
export interface Alternative extends Change {
  placement: Placement;
}

/** What comes of a crop put in place of all that is proposed for its bed and season. */
export function breaksOf(problem: RotationProblem, placements: readonly Placement[], changed: Placement): Change {
  const rest = placements.filter(({ bedId, season }) => bedId !== changed.bedId || season !== changed.season);
  const plan = [...rest, changed];
  const now = brokenBy(problem, placements, changed.bedId);
  const then = brokenBy(problem, plan, changed.bedId);
  return {
    breaks: without(then, now),
    mends: without(now, then),
    costs: costOf(problem, plan) - costOf(problem, placements),
  };
}

/** Every crop wished for in a season, held against one bed: what breaks no hard rule first, then by what it costs. */
export function alternativesFor(
  problem: RotationProblem,
  placements: readonly Placement[],
  { bedId, season }: Pick<Placement, 'bedId' | 'season'>,
): Alternative[] {
  const bed = problem.beds.find(({ id }) => id === bedId);
  if (bed === undefined) return [];
  return problem.wishes
    .filter((wish) => wish.season === season)
    .map(({ cropId, amount }) => {
      const areaM2 = 'beds' in amount ? bed.areaM2 : Math.min(bed.areaM2, amount.areaM2);
      const placement = { bedId, season, cropId, areaM2 };
      return { placement, ...breaksOf(problem, placements, placement) };
    })
    .sort((a, b) => hardIn(a) - hardIn(b) || a.costs - b.costs);
}

function hardIn({ breaks }: Change): number {
  return breaks.filter(isHard).length;
}

function brokenBy(problem: RotationProblem, placements: readonly Placement[], bedId: string): BrokenRule[] {
  const bed = problem.beds.find(({ id }) => id === bedId);
  return [...(bed === undefined ? [] : brokenIn(problem, bed, placements)), ...brokenInNone(problem, placements)];
}

function without(broken: readonly BrokenRule[], known: readonly BrokenRule[]): BrokenRule[] {
  const held = new Set(known.map((each) => JSON.stringify(each)));
  return broken.filter((each) => !held.has(JSON.stringify(each)));
}
