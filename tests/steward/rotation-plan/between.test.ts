import { describe, expect, it } from 'vitest';
import { coverParts } from '../../../src/practices/covers.ts';
import { gardenProblem } from '../../../src/practices/rotation-plan/garden-problem.ts';
import { betweenTable } from '../../../src/steward/rotation-plan/between.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { frostDates, garden, inputOf, milwaukee } from '../../practices/gardens.ts';

const CROPS = ['brussels-sprouts', 'tomato', 'pea', 'garlic', 'beet'];

function tableIn(climate: Parameters<typeof inputOf>[1], today: string, latitude = 43) {
  const wishes = CROPS.map((cropId) => ({ cropId, amount: { beds: 1 } }));
  const input = inputOf(garden({ startedOn: today, wishes, place: { latitude } }), climate, today);
  return betweenTable(input, gardenProblem(input, { years: 1, anew: false }));
}

describe('what lies between two crops', () => {
  const table = tableIn(milwaukee, '2026-11-25');

  it('a long gap carries a cover with a legume, named', () => {
    const { legume } = table['garlic>tomato'] ?? {};
    const parts = typeof legume === 'object' ? coverParts(legume.coverId) : [];
    expect(parts.some(({ cover }) => cover.form === 'legume')).toBe(true);
  });

  it('after late sprouts there is no time for one before early beets', () => {
    expect(table['brussels-sprouts>beet']?.legume).toBe('none');
  });

  it('only hungry crops ask for one', () => {
    expect(table['tomato>pea']?.legume).toBe('unknown');
  });

  it('garlic still goes in after tomatoes', () => {
    expect(table['tomato>garlic']?.stillStands).toBe(false);
  });

  it('after peas there is time for beets in the same season, after late sprouts there is none', () => {
    expect(table['pea>beet']?.follows).toBeGreaterThanOrEqual(0);
    expect(table['brussels-sprouts>beet']?.follows).toBeUndefined();
    expect(table['pea>garlic']?.follows).toBeUndefined();
  });

  it('is much the same half a year on in the south', () => {
    const [north, south] = [
      tableIn(frostDates('04-23', '10-23'), '2026-11-25'),
      tableIn(frostDates('10-23', '04-23', -43), '2027-05-25', -43),
    ];
    const held = (each: typeof table) =>
      Object.entries(each).map(([pair, { legume, stillStands }]) => [pair, typeof legume, stillStands]);
    expect(held(south)).toEqual(held(north));
  });

  it('says nothing where no freeze is known', () => {
    expect(tableIn(inventedClimate(), '2026-11-25')).toEqual({});
  });
});
