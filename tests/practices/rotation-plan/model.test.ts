import { describe, expect, it } from 'vitest';
import { alikeBeds } from '../../../src/practices/rotation-plan/alike.ts';
import { filled } from '../../../src/practices/rotation-plan/filled.ts';
import { lpText } from '../../../src/practices/rotation-plan/lp-text.ts';
import { ModelSheet } from '../../../src/practices/rotation-plan/model.ts';
import { bedsFor } from '../../../src/practices/rotation-plan/wishes.ts';
import { carried, placed, planBed, rotationProblem, wish } from './problems.ts';

describe('a model as text', () => {
  it('has its costs, rows, bounds and whole columns', () => {
    const sheet = new ModelSheet();
    const [a, b] = [sheet.column({ whole: true, cost: 2 }), sheet.column({ upper: 2.5 })];
    sheet.charge(a, 0.5);
    sheet.row(
      [
        [b, 1],
        [a, -2.5],
      ],
      { most: 0 },
    );
    sheet.row(
      [
        [a, 1],
        [b, 1],
      ],
      { least: 1 },
    );
    expect(lpText(sheet).split('\n')).toEqual([
      'Minimize',
      ' cost: + 2.50000000 v0',
      'Subject To',
      ' most0: + 1 v1 - 2.50000000 v0 <= 0',
      ' least1: + 1 v0 + 1 v1 >= 1',
      'Bounds',
      ' 0 <= v0 <= 1',
      ' 0 <= v1 <= 2.50000000',
      'General',
      ' v0',
      'End',
      '',
    ]);
  });
});

describe('beds that are alike', () => {
  it('differ in nothing but their names', () => {
    const beds = [
      planBed('a'),
      planBed('b', { carried: carried({ 2026: 'kale' }) }),
      planBed('c'),
      planBed('d', { areaM2: 4 }),
    ];
    expect(alikeBeds(beds).map((kind) => kind.map(({ id }) => id))).toEqual([['a', 'c']]);
  });
});

describe('room', () => {
  const beds = [planBed('a'), planBed('b', { areaM2: 2 }), planBed('c', { areaM2: 9, lasting: 'asparagus' })];

  it('the fewest beds are the largest, a tenth may be short, and lasting ones count for none', () => {
    const problem = rotationProblem({ beds });
    expect([3, 3.3, 3.4, 5, 50].map((areaM2) => bedsFor(problem, [{ areaM2 }]))).toEqual([1, 1, 2, 2, 2]);
    expect(bedsFor(problem, [{ beds: 1 }, { areaM2: 1 }, { areaM2: 2 }])).toBe(2);
  });

  it('what is left of it goes to the crops that are a little short', () => {
    const wishes = [wish('carrot', { areaM2: 2 }), wish('leek', { areaM2: 1 })];
    const plan = [placed('a', 'carrot', 2027, 1.8), placed('a', 'leek', 2027, 0.9)];
    expect(filled(rotationProblem({ beds, wishes }), plan).map(({ areaM2 }) => areaM2)).toEqual([2, 1]);
  });
});
