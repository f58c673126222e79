/**
 * The last of the room: a wish counts as met a little short of its whole, and where there is room it gets the whole.
 */
import { type Placement, type RotationProblem, roomIn } from './problem.ts';
import { openWishes } from './wishes.ts';

/** A plan with every piece grown into the room left in its bed, up to its wish, in the order of the beds. */
export function filled(problem: RotationProblem, placements: readonly Placement[]): Placement[] {
  const plan = placements.map((place) => ({ ...place }));
  for (const { cropId, season, amount } of openWishes(problem)) {
    if ('beds' in amount) continue;
    const pieces = plan.filter((place) => place.cropId === cropId && place.season === season);
    for (const piece of pieces) {
      const bed = problem.beds.find(({ id }) => id === piece.bedId);
      const inBed = plan.filter(({ bedId }) => bedId === piece.bedId).filter((place) => place.season === season);
      const room = (bed === undefined ? 0 : roomIn(bed, season)) - areaOf(inBed);
      const more = Math.min(room, amount.areaM2 - areaOf(pieces));
      if (more > 0) piece.areaM2 = hundredths(piece.areaM2 + more);
    }
  }
  return plan;
}

function areaOf(placements: readonly Placement[]): number {
  return placements.reduce((sum, { areaM2 }) => sum + areaM2, 0);
}

function hundredths(areaM2: number): number {
  return Math.round(areaM2 * 100) / 100;
}
