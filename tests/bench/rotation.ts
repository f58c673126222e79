/**
 * How long a rotation takes: thirty beds for four years against a household's five for one.
 */
import { performance } from 'node:perf_hooks';
import { costOf } from '../../src/practices/rotation-plan/cost.ts';
import {
  type Between,
  betweenKey,
  type Carried,
  type RotationProblem,
} from '../../src/practices/rotation-plan/problem.ts';
import { proposalFor } from '../../src/steward/rotation-plan/propose.ts';
import { type Solver, startSolver } from '../../src/steward/solver/solver.ts';
import { planBed, rotationProblem, wish } from '../practices/rotation-plan/problems.ts';
import { median } from './median.ts';

/** Crops in the order of a rotation of four plots. */
const PLOTS = [
  ['tomato', 'pepper', 'potato'],
  ['pea', 'snap-bean', 'carrot', 'lettuce-leaf'],
  ['broccoli', 'kale', 'cabbage', 'beet'],
  ['winter-squash', 'cucumber', 'onion-sets', 'garlic', 'sweet-corn'],
] as const;
const AREAS_M2 = [2.88, 2.88, 4, 1.5];

/** After these there is no time for a cover with a legume. */
const LATE = ['kale', 'cabbage', 'carrot', 'beet'];

/** Prints how long the large one takes against the small one, and what its plan breaks by the weights. */
export async function reportRotation(): Promise<void> {
  const solver = startSolver();
  const [small, large] = [rotationOf(5, 1), rotationOf(30, 4)];
  await timed(small, solver);
  const rounds: { ratio: number; seconds: number; cost: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const [a, b] = [await timed(small, solver), await timed(large, solver)];
    rounds.push({ ratio: b.seconds / a.seconds, seconds: b.seconds, cost: b.cost });
  }
  await solver.close();
  const middle = (of: (round: (typeof rounds)[number]) => number) => median(rounds.map(of));
  console.log(
    `A rotation of 30 beds for four years against one of 5 beds for a year: ratio of times ` +
      `${middle(({ ratio }) => ratio).toFixed(0)} (${middle(({ seconds }) => seconds).toFixed(1)} s a plan; ` +
      `it breaks ${middle(({ cost }) => cost).toFixed(0)} by weight).`,
  );
}

const ROUNDS = 3;

async function timed(problem: RotationProblem, solver: Solver): Promise<{ seconds: number; cost: number }> {
  const from = performance.now();
  const { placements } = await proposalFor(problem, solver);
  return { seconds: (performance.now() - from) / 1000, cost: costOf(problem, placements) };
}

/** Beds that have followed the four plots, with four fifths of them wished for. */
function rotationOf(beds: number, years: number): RotationProblem {
  const seasons: [number, ...number[]] = [2027];
  for (let season = 2028; season < 2027 + years; season += 1) seasons.push(season);
  const crops = PLOTS.flat().filter((_, at) => beds > 10 || at % 3 === 0);
  const areaM2 = Math.round((beds * 2.8 * 0.8 * 10) / crops.length) / 10;
  return rotationProblem({
    beds: Array.from({ length: beds }, (_, at) =>
      planBed(`b${at}`, { areaM2: AREAS_M2[at % AREAS_M2.length] ?? 3, carried: carriedBy(at) }),
    ),
    wishes: seasons.flatMap((season) => crops.map((cropId) => wish(cropId, { areaM2 }, season))),
    seasons,
    between: Object.fromEntries(
      PLOTS.flat().flatMap((before) => PLOTS.flat().map((next) => [betweenKey(before, next), betweenOf(before, next)])),
    ),
  });
}

function betweenOf(before: string, next: string): Between {
  const isLate = LATE.includes(before);
  return { legume: isLate ? 'none' : { coverId: 'oats-field-pea' }, stillStands: isLate && next === 'garlic' };
}

function carriedBy(bed: number): Carried[] {
  return [2023, 2024, 2025, 2026].flatMap((season) => {
    const plot = PLOTS[(bed + season) % PLOTS.length] ?? [];
    const cropId = plot[bed % plot.length];
    return cropId === undefined ? [] : [{ season, cropId }];
  });
}
