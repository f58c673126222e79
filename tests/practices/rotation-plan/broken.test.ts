import { describe, expect, it } from 'vitest';
import { brokenRules, unknownPasts } from '../../../src/practices/rotation-plan/broken.ts';
import { isHard } from '../../../src/practices/rotation-plan/looked-at.ts';
import type { Placement, PlanBed, RotationProblem } from '../../../src/practices/rotation-plan/problem.ts';
import { brokenSentence } from '../../../src/practices/rotation-plan/sentences.ts';
import { carried, placed, planBed, rotationProblem, wish } from './problems.ts';

function broken(problem: RotationProblem, placements: readonly Placement[]): string[] {
  return brokenRules(problem, placements).map(({ reason }) => brokenSentence(reason));
}

/** What breaks where a crop goes into a single bed in 2027. */
function inBed(cropId: string, parts: Partial<PlanBed>, between = {}): string[] {
  return broken(rotationProblem({ beds: [planBed('a', parts)], between }), [placed('a', cropId)]);
}

describe('rules that may not break', () => {
  it('a family waits: three years for cabbage kin, four for the nightshades', () => {
    expect(inBed('kale', { carried: carried({ 2025: 'cabbage' }) })).toEqual([
      'Kale comes back 2 years after cabbage of 2025; 3 years is the rule.',
    ]);
    expect(inBed('kale', { carried: carried({ 2024: 'cabbage' }) })).toEqual([
      'Kale comes back 3 years after cabbage of 2024: enough, though 5 years would be safer.',
    ]);
    expect(inBed('potato', { carried: carried({ 2024: 'tomato' }) })).toEqual([
      'Potato comes back 3 years after tomato of 2024; 4 years is the rule.',
    ]);
    expect(inBed('potato', { carried: carried({ 2023: 'tomato' }) })).toEqual([]);
  });

  it('history that breaks them is told as past, and is not held against the plan', () => {
    const beds = [planBed('a', { carried: carried({ 2023: 'tomato', 2025: 'potato' }) })];
    const [past, ...others] = brokenRules(rotationProblem({ beds }), []);
    expect(past).toMatchObject({ how: 'past', season: 2025, cropId: 'potato', reason: { limit: 4 } });
    expect(past && isHard(past)).toBe(true);
    expect(others).toEqual([]);
  });

  it('what a proposal does to a crop planned for a later year is told at that crop', () => {
    const beds = [planBed('a', { carried: carried({ 2029: 'broccoli' }) })];
    const rules = brokenRules(rotationProblem({ beds, seasons: [2027, 2028, 2029] }), [placed('a', 'kale')]);
    expect(rules.filter(isHard)).toMatchObject([{ season: 2029, cropId: 'broccoli', how: 'settled' }]);
  });

  it('a lasting crop and a planned one hold their bed', () => {
    expect(inBed('carrot', { lasting: 'asparagus' })).toEqual(['The asparagus stays: there is no room for carrot.']);
    expect(inBed('carrot', { carried: carried({ 2027: 'leek' }) })).toEqual([
      'Leek is planned here: there is no room for carrot.',
    ]);
  });

  it('a disease keeps its hosts out', () => {
    const saw = { crop: 'kale', disease: 'clubroot', found: '2024-07-01', until: '2031-07-01' };
    const why = { rule: 'rotation-plan.disease', saw, source: 'veg:V12' } as const;
    const [told] = inBed('kale', { closed: [{ cropId: 'kale', season: 2027, disease: 'clubroot', why }] });
    expect(told).toBe('Clubroot, found here on ⟦2024-07-01⟧, keeps kale out until ⟦2031-07-01⟧.');
  });

  it('two crops share a bed only as far as there is room', () => {
    const problem = rotationProblem({ beds: [planBed('a')] });
    expect(broken(problem, [placed('a', 'carrot', 2027, 2), placed('a', 'leek', 2027, 1)])).toEqual([]);
    expect(broken(problem, [placed('a', 'carrot', 2027, 2), placed('a', 'leek', 2027, 2)])).toEqual([
      'Carrot, leek together want ⟦4 m2⟧; the bed has ⟦3 m2⟧.',
    ]);
  });

  it('garlic does not go in where late cabbage still stands', () => {
    const between = { 'cabbage>garlic': { legume: 'unknown', stillStands: true } };
    expect(inBed('garlic', { carried: carried({ 2026: 'cabbage' }) }, between)).toEqual([
      'Cabbage still stands when garlic has to go in.',
    ]);
  });
});

describe('rules that may', () => {
  const none = { 'leek>tomato': { legume: 'none', stillStands: false } } as const;
  const fits = { 'leek>tomato': { legume: { coverId: 'hairy_vetch' }, stillStands: false } } as const;

  it('a hungry crop wants a legume, or time for one, ahead of it', () => {
    const after = { carried: carried({ 2026: 'leek' }) };
    expect(inBed('tomato', after, none)[0]).toContain('Tomato is hungry and follows leek');
    expect(inBed('tomato', after, fits)).toEqual([]);
    expect(inBed('tomato', { carried: carried({ 2026: 'pea' }) }, none)).toEqual([]);
    expect(inBed('tomato', { ...after, covers: [{ season: 2027, coverId: 'rye-vetch' }] }, none)).toEqual([]);
  });

  it('where no dates are known the order of feeding is not held against a plan', () => {
    expect(inBed('tomato', { carried: carried({ 2026: 'leek' }) })).toEqual([]);
  });

  it('a cover of the same family does not stand straight ahead', () => {
    expect(inBed('kale', { covers: [{ season: 2027, coverId: 'mustard' }] })[0]).toContain('its kin');
    expect(inBed('kale', { covers: [{ season: 2026, coverId: 'mustard' }] })).toEqual([]);
    expect(inBed('sweet-corn', { covers: [{ season: 2027, coverId: 'cereal_rye' }] })).toEqual([]);
  });

  it('okra and the nightshades do not follow each other', () => {
    expect(inBed('okra', { carried: carried({ 2026: 'tomato' }) })[0]).toContain('verticillium wilt');
    expect(inBed('okra', { carried: carried({ 2025: 'tomato' }) })).toEqual([]);
  });

  it('a crop and its family keep together', () => {
    const wishes = [wish('tomato', { areaM2: 3 })];
    const problem = rotationProblem({ beds: [planBed('a'), planBed('b')], wishes });
    const apart = [placed('a', 'tomato', 2027, 1.5), placed('b', 'tomato', 2027, 1.5)];
    expect(broken(problem, apart)).toEqual([
      'Tomato lies in 2 beds in 2027; 1 bed would hold it.',
      'The family of tomatoes and potatoes lies in 2 beds in 2027; 1 bed would hold it.',
    ]);
  });
});

describe('a past nobody wrote down', () => {
  const beds = [planBed('a', { knownSince: 2025 })];

  it('breaks no rule, and is named as far as it matters', () => {
    const problem = rotationProblem({ beds });
    expect(brokenRules(problem, [placed('a', 'tomato')])).toEqual([]);
    // Tomatoes wait four years: 2024 to 2026 would have to be known. Carrots wait three: 2025 and 2026 are.
    expect(unknownPasts(problem, [placed('a', 'tomato')])).toEqual([{ bedId: 'a', season: 2027, cropId: 'tomato' }]);
    expect(unknownPasts(problem, [placed('a', 'carrot')])).toEqual([]);
  });
});
