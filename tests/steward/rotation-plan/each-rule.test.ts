/**
 * Each rule alone decides a plan: with its weight at nought, or its row left out, one of these fails. Every case is put to
 * the solver and to the search for large gardens.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Between, PlanBed, PlanWish, RotationProblem } from '../../../src/practices/rotation-plan/problem.ts';
import { searchPlan, type Tries } from '../../../src/practices/rotation-plan/search.ts';
import { bestPlan } from '../../../src/steward/rotation-plan/best-plan.ts';
import { type Solver, startSolver } from '../../../src/steward/solver/solver.ts';
import { carried, planBed, rotationProblem, wish } from '../../practices/rotation-plan/problems.ts';

let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

const LATE: Between = { legume: 'none', stillStands: true };
const between = { 'kale>tomato': LATE, 'kale>garlic': LATE };

/** Two or three beds in one season have few plans: a tenth of what is tried in a garden comes to the best of them. */
const FEW: Tries = { perCell: 2000, least: 10_000, together: 40_000 };

function searched(problem: RotationProblem): string[] {
  const search = searchPlan(problem, FEW);
  for (;;) {
    const step = search.next();
    if (step.done === true) return words(step.value);
  }
}

function words(placements: readonly { bedId: string; cropId: string }[]): string[] {
  return placements.map(({ bedId, cropId }) => `${bedId} ${cropId}`).sort();
}

/** What both ways of planning put where. */
async function planned(problem: RotationProblem): Promise<string[][]> {
  const { placements } = await bestPlan(problem, solver);
  return [words(placements), searched(problem)];
}

describe('a crop goes to the bed that breaks the least', () => {
  // Ties go by the size of beds: a bed a little larger and a little smaller is tried, so that no tie can pass for the rule.
  const choice = async (cropId: string, worse: Partial<PlanBed>, table: Record<string, Between> = {}) => {
    const wishes = [wish(cropId, { beds: 1 })];
    for (const [areaM2, otherM2] of [[3, 3.5] as const, [3.5, 3] as const]) {
      const beds = [planBed('worse', { areaM2, ...worse }), planBed('good', { areaM2: otherM2 })];
      expect(await planned(rotationProblem({ beds, wishes, between: table }))).toEqual([
        [`good ${cropId}`],
        [`good ${cropId}`],
      ]);
    }
  };

  it('kale not straight behind a cover of mustard', () =>
    choice('kale', { covers: [{ season: 2027, coverId: 'mustard' }] }));
  it('peas not straight behind a cover of field pea', () =>
    choice('pea', { covers: [{ season: 2027, coverId: 'field_pea' }] }));
  it('tomatoes not behind kale, after which no cover with a legume has time', () =>
    choice(
      'tomato',
      { carried: carried({ 2026: 'kale' }) },
      { 'kale>tomato': { legume: 'none', stillStands: false } },
    ));
  it('okra not in the year after tomatoes', () => choice('okra', { carried: carried({ 2026: 'tomato' }) }));
  it('kale five years after cabbage rather than three', () =>
    choice('kale', { carried: carried({ 2024: 'cabbage' }) }));
  it('a crop where the past is known', () => choice('carrot', { knownSince: 2026 }));
});

describe('crops keep together', () => {
  const small = ['a', 'b'].map((id) => planBed(id, { areaM2: 1.5 }));

  it('one crop in one bed, even where that follows kale', async () => {
    const large = planBed('c', { carried: carried({ 2026: 'kale' }) });
    const table = { 'kale>tomato': { legume: 'none', stillStands: false } } as const;
    const wishes = [wish('tomato', { areaM2: 3 })];
    const problem = rotationProblem({ beds: [...small, large], wishes, between: table });
    // In one bed 4 break, in two 5 for the crop and 2 for its family.
    expect(await planned(problem)).toEqual([['c tomato'], ['c tomato']]);
  });

  it('one family in one bed, even where it waited for the short end of its years only', async () => {
    const large = planBed('c', { carried: carried({ 2024: 'cabbage' }) });
    const wishes = [wish('kale', { areaM2: 1.5 }), wish('broccoli', { areaM2: 1.5 })];
    const together = ['c broccoli', 'c kale'];
    expect(await planned(rotationProblem({ beds: [...small, large], wishes }))).toEqual([together, together]);
  });
});

describe('a crop stays out rather than break a hard rule', () => {
  const out = async (bed: Partial<PlanBed>, wishes: PlanWish[]) => {
    const problem = rotationProblem({ beds: [planBed('a', bed)], wishes, between });
    expect(await planned(problem)).toEqual([[], []]);
  };
  const kale = [wish('kale', { beds: 1 })];
  const why = { rule: 'rotation-plan.disease', saw: {}, source: 'veg:V12' } as const;

  it('its family was there', () => out({ carried: carried({ 2025: 'cabbage' }) }, kale));
  it('its family is planned for a later year', () => out({ carried: carried({ 2029: 'cabbage' }) }, kale));
  it('a disease is in the bed', () =>
    out({ closed: [{ cropId: 'kale', season: 2027, disease: 'clubroot', why }] }, kale));
  it('a lasting crop is', () => out({ lasting: 'rhubarb' }, kale));
  it('another is planned there', () => out({ carried: carried({ 2027: 'leek' }) }, kale));
  it('it is too late for it there', () => {
    const tooLate = { rule: 'rotation-plan.too-late', saw: {}, source: "the garden's climate" } as const;
    return out({ shut: [{ cropId: 'kale', season: 2027, why: tooLate }] }, kale);
  });
  it('the one before still stands', () => out({ carried: carried({ 2026: 'kale' }) }, [wish('garlic', { beds: 1 })]));
  it('there is room for one only', async () => {
    const wishes = [wish('kale', { beds: 1 }), wish('carrot', { areaM2: 1 })];
    const both = await planned(rotationProblem({ beds: [planBed('a')], wishes }));
    expect(both.map((plan) => plan.length)).toEqual([1, 1]);
  });

  it('beside a share that is planned there is the rest of the bed', async () => {
    const share = [{ season: 2027, cropId: 'leek', areaM2: 2 }];
    const problem = rotationProblem({
      beds: [planBed('a', { carried: share })],
      wishes: [wish('carrot', { areaM2: 3 })],
    });
    const { placements } = await bestPlan(problem, solver);
    expect(placements).toMatchObject([{ bedId: 'a', cropId: 'carrot', areaM2: 1 }]);
  });
});
