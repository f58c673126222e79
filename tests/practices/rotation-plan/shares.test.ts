import { describe, expect, it } from 'vitest';
import type { Amount, Carried } from '../../../src/practices/rotation-plan/problem.ts';
import { openWishes } from '../../../src/practices/rotation-plan/wishes.ts';
import { planBed, rotationProblem, wish } from './problems.ts';

/** What is still to be placed of a wish for tomatoes, with what is planned of them in a bed of 3 m². */
function open(amount: Amount, ...planned: Omit<Carried, 'season' | 'cropId'>[]): Amount[] {
  const carried = planned.map((share) => ({ season: 2027, cropId: 'tomato', ...share }));
  const problem = rotationProblem({
    beds: [planBed('a', { carried }), planBed('b')],
    wishes: [wish('tomato', amount)],
  });
  return openWishes(problem).map((each) => each.amount);
}

describe('of a wish that is planned in part', () => {
  it('the share of the bed counts, and the whole bed where none is told', () => {
    expect(open({ areaM2: 5 }, { areaM2: 2 })).toEqual([{ areaM2: 3 }]);
    expect(open({ areaM2: 5 }, {})).toEqual([{ areaM2: 2 }]);
    expect(open({ areaM2: 2 }, { areaM2: 2 })).toEqual([]);
  });

  it('sowings with shares add up, never to more than the bed', () => {
    expect(open({ areaM2: 5 }, { areaM2: 1 }, { areaM2: 1 })).toEqual([{ areaM2: 3 }]);
    expect(open({ areaM2: 5 }, {}, {})).toEqual([{ areaM2: 2 }]);
  });

  it('a part of a bed is no bed, where whole ones are wanted', () => {
    expect(open({ beds: 1 }, { areaM2: 2 })).toEqual([{ beds: 1 }]);
    expect(open({ beds: 1 }, { areaM2: 3 })).toEqual([]);
  });
});
