import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lpText } from '../../../src/practices/rotation-plan/lp-text.ts';
import type { RotationProblem } from '../../../src/practices/rotation-plan/problem.ts';
import { ruleRows } from '../../../src/practices/rotation-plan/rotation-models.ts';
import { givingWayInWords, ruleInWords } from '../../../src/practices/rotation-plan/sentences.ts';
import { type Conflict, conflictsOf } from '../../../src/steward/rotation-plan/conflicts.ts';
import { proposalFor } from '../../../src/steward/rotation-plan/propose.ts';
import { type Solver, startSolver } from '../../../src/steward/solver/solver.ts';
import { carried, planBed, rotationProblem, wish } from '../../practices/rotation-plan/problems.ts';

let solver: Solver;
beforeAll(() => {
  solver = startSolver();
});
afterAll(() => solver.close());

/** Fails unless a conflict's rules cannot be kept together and can with any one left out. */
async function expectSmallest(problem: RotationProblem, { rules }: Conflict): Promise<void> {
  const rows = ruleRows(problem);
  const found = async (kept: typeof rules) => (await solver.solve(lpText(rows.together(kept)))).found;
  expect(await found(rules)).toBe('impossible');
  for (const left of rules) expect(await found(rules.filter((rule) => rule !== left))).toBe('best');
}

async function conflictIn(problem: RotationProblem): Promise<Conflict> {
  const { conflicts } = await proposalFor(problem, solver);
  const [conflict] = conflicts;
  if (conflict === undefined) throw new Error('No conflict was told.');
  await expectSmallest(problem, conflict);
  return conflict;
}

function words(problem: RotationProblem, { rules, cheapest }: Conflict) {
  return {
    rules: rules.map((rule) => ruleInWords(rule, problem)).sort(),
    cheapest: cheapest.map(({ rule, by }) => givingWayInWords(rule, by, problem)),
  };
}

describe('wishes that cannot be met', () => {
  it('more than the beds hold: the beds and the amounts, and a little less of one', async () => {
    const wishes = [wish('carrot', { areaM2: 2 }), wish('leek', { areaM2: 2 }), wish('pea', { areaM2: 2 })];
    const problem = rotationProblem({ beds: [planBed('a'), planBed('b', { areaM2: 2 })], wishes });
    const conflict = await conflictIn(problem);
    // Nine tenths of 2 m² count as met: three times that is 5.4 m² in 5 m².
    expect(words(problem, conflict).rules).toEqual([
      'there is only so much room in the beds',
      '⟦2 m2⟧ of carrot in 2027',
      '⟦2 m2⟧ of garden pea in 2027',
      '⟦2 m2⟧ of leek in 2027',
    ]);
    expect(conflict.cheapest.every(({ rule }) => rule.kind === 'wish')).toBe(true);
    expect(conflict.cheapest.reduce((sum, { by }) => sum + 2 * by, 0)).toBeCloseTo(0.4, 2);
  });

  it('a family that waits everywhere, the other crops left out of it', async () => {
    const beds = [
      planBed('a', { carried: carried({ 2025: 'tomato' }) }),
      planBed('b', { carried: carried({ 2026: 'potato' }) }),
    ];
    const wishes = [wish('tomato', { beds: 1 }), wish('carrot', { beds: 1 })];
    const problem = rotationProblem({ beds, wishes });
    expect(words(problem, await conflictIn(problem))).toEqual({
      rules: [
        '1 bed of tomato in 2027',
        'the family of tomatoes and potatoes waits 4 years before it comes back to a bed, or its diseases stay',
      ],
      cheapest: ['ask for less tomato in 2027: 1 bed fewer'],
    });
  });

  it('a planned crop in the way of a wish is moved before the wish is cut', async () => {
    const problem = rotationProblem({
      beds: [planBed('a', { carried: carried({ 2027: 'carrot' }) })],
      wishes: [wish('leek', { beds: 1 })],
    });
    expect(words(problem, await conflictIn(problem))).toEqual({
      rules: ['1 bed of leek in 2027', 'Bed A is planned already for 2027'],
      cheapest: ['move what is planned for Bed A in 2027'],
    });
  });

  it('lasting crops and diseases are named with their beds', async () => {
    const why = { rule: 'rotation-plan.disease', saw: { disease: 'clubroot' }, source: 'veg:V12' } as const;
    const closed = [{ cropId: 'kale', season: 2027, disease: 'clubroot', why }];
    const problem = rotationProblem({
      beds: [planBed('a', { lasting: 'rhubarb' }), planBed('b', { closed })],
      wishes: [wish('kale', { beds: 1 })],
    });
    expect(words(problem, await conflictIn(problem)).rules).toEqual([
      '1 bed of kale in 2027',
      'clubroot was found in Bed B and keeps out what catches it',
      'the rhubarb lasts for years and stays in Bed A',
    ]);
  });

  it('over several years, where each year alone would do', async () => {
    const seasons = [2027, 2028, 2029] as const;
    const wishes = seasons.map((season) => wish('tomato', { beds: 1 }, season));
    const problem = rotationProblem({ beds: [planBed('a'), planBed('b')], wishes, seasons: [...seasons] });
    const { rules } = await conflictIn(problem);
    expect(rules.filter(({ kind }) => kind === 'wish')).toHaveLength(3);
  });

  it('where all can be kept nothing is told', async () => {
    const problem = rotationProblem({ beds: [planBed('a')], wishes: [wish('kale', { beds: 1 })] });
    expect(await conflictsOf(problem, problem.wishes, solver)).toEqual([]);
  });
});

it('no wish is to be less by nothing', () => {
  const okra = wish('okra', { areaM2: 2 });
  const problem = rotationProblem({ beds: [planBed('a')], wishes: [okra] });
  expect(givingWayInWords({ kind: 'wish', wish: okra }, 0.002, problem)).toBe(
    'ask for less okra in 2027: ⟦0.1 m2⟧ less',
  );
});
