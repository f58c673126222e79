import { describe, expect, it } from 'vitest';
import { alternativesFor, breaksOf } from '../../../src/practices/rotation-plan/change.ts';
import { brokenSentence } from '../../../src/practices/rotation-plan/sentences.ts';
import { carried, placed, planBed, rotationProblem, wish } from './problems.ts';

const beds = [
  planBed('a', { carried: carried({ 2024: 'cabbage', 2026: 'pea' }) }),
  planBed('b', { carried: carried({ 2025: 'potato' }) }),
];
const wishes = [wish('tomato', { beds: 1 }), wish('kale', { areaM2: 2 }), wish('pea', { areaM2: 1 })];
const problem = rotationProblem({ beds, wishes });
const plan = [placed('a', 'tomato'), placed('b', 'kale', 2027, 2)];

const sentences = (broken: readonly { reason: Parameters<typeof brokenSentence>[0] }[]) =>
  broken.map(({ reason }) => brokenSentence(reason));

describe('a crop put in by the gardener', () => {
  it('is told what it would break, and nothing of what breaks anyway', () => {
    expect(sentences(breaksOf(problem, plan, placed('a', 'pea')).breaks)).toEqual([
      'Garden pea comes back 1 year after garden pea of 2026; 3 years is the rule.',
    ]);
    expect(breaksOf(problem, plan, placed('a', 'tomato')).breaks).toEqual([]);
  });

  it('is told what it mends', () => {
    const { breaks, mends, costs } = breaksOf(problem, [placed('a', 'kale', 2027, 2)], placed('a', 'tomato'));
    expect(breaks).toEqual([]);
    expect(sentences(mends)).toEqual([
      'Kale comes back 3 years after cabbage of 2024: enough, though 5 years would be safer.',
    ]);
    // A bed of tomato for a bed of kale: one wish for the other, and the longer wait is kept.
    expect(costs).toBeCloseTo(-1);
  });

  it('in more beds than it needs is told as such', () => {
    const { breaks } = breaksOf(problem, plan, placed('a', 'kale', 2027, 2));
    expect(sentences(breaks)).toContain('Kale lies in 2 beds in 2027; 1 bed would hold it.');
  });
});

describe('the choices for a bed', () => {
  it('are the wishes of the season, those that break no hard rule first', () => {
    const choices = alternativesFor(problem, plan, { bedId: 'b', season: 2027 });
    expect(choices.map(({ placement }) => placement.cropId)).toEqual(['kale', 'pea', 'tomato']);
    expect(choices.at(-1)?.breaks[0]?.reason).toMatchObject({ rule: 'rotation-plan.returns', source: 'veg:V12' });
  });
});
