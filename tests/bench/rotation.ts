/**
 * How long a rotation takes: thirty beds for four years, and a household's five for one.
 */
import { performance } from 'node:perf_hooks';
import type { Carried, RotationProblem } from '../../src/practices/rotation-plan/problem.ts';
import { proposalFor } from '../../src/steward/rotation-plan/propose.ts';
import { startSolver } from '../../src/steward/solver/solver.ts';
import { planBed, rotationProblem, wish } from '../practices/rotation-plan/problems.ts';

/** Crops in the order of a rotation of four plots. */
const PLOTS = [
  ['tomato', 'pepper', 'potato'],
  ['pea', 'snap-bean', 'carrot', 'lettuce-leaf'],
  ['broccoli', 'kale', 'cabbage', 'beet'],
  ['winter-squash', 'cucumber', 'onion-sets', 'garlic', 'sweet-corn'],
] as const;
const AREAS_M2 = [2.88, 2.88, 4, 1.5];

/** Prints how long both take. */
export async function reportRotation(): Promise<void> {
  const solver = startSolver();
  const small = await secondsFor(rotationOf(5, 1), solver);
  const large = await secondsFor(rotationOf(30, 4), solver);
  await solver.close();
  console.log(`A rotation of 5 beds for a year: ${small} s; of 30 beds for four years: ${large} s.`);
}

async function secondsFor(problem: RotationProblem, solver: ReturnType<typeof startSolver>): Promise<string> {
  const from = performance.now();
  await proposalFor(problem, solver);
  return ((performance.now() - from) / 1000).toFixed(1);
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
  });
}

function carriedBy(bed: number): Carried[] {
  return [2023, 2024, 2025, 2026].flatMap((season) => {
    const plot = PLOTS[(bed + season) % PLOTS.length] ?? [];
    const cropId = plot[bed % plot.length];
    return cropId === undefined ? [] : [{ season, cropId }];
  });
}
