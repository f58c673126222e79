/**
 * A northern garden and its record moved half a year: the same tasks, half a year later, south of the equator.
 */
import { describe, expect, it } from 'vitest';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import { dayOfIndex, seasonIndex, seasonOf } from '../../src/climate/season.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { type Day, daysBetween } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { NO_OFFSETS, recordRows } from '../climate/real-data.ts';
import { bed, cover, garden, inputOf, pile, setOut, sown } from './gardens.ts';

/** The southern day at the season index of a northern one. */
const south = (day: Day): Day => dayOfIndex('07-01', seasonOf('01-01', day), seasonIndex('01-01', day));

const northRows = recordRows('milwaukee').filter(({ day }) => !day.endsWith('-02-29'));
const at = { longitude: -88, origin: 'Milwaukee', ...NO_OFFSETS };
const northClimate = climateFromRecord({ ...at, latitude: 43, rows: northRows });
const southClimate = climateFromRecord({
  ...at,
  latitude: -43,
  rows: northRows.map((row) => ({ ...row, day: south(row.day) })),
});

/** A garden with every kind of task in it, its days turned over by a rule. */
function gardenOn(day: (northern: Day) => Day, latitude: number): Garden {
  return garden({
    startedOn: day('2027-05-20'),
    place: { latitude },
    beds: ['a', 'b', 'c', 'd', 'e'].map((id) => bed(id)),
    plantings: [
      sown('pea', day('2027-04-15'), { id: 'peas', harvested: day('2027-07-05') }),
      setOut('broccoli', day('2028-05-01'), { id: 'broccoli' }),
      setOut('tomato', day('2027-06-25'), { id: 'tomato', bedId: 'b' }),
      setOut('tomato', day('2028-05-25'), { id: 'next', bedId: 'c' }),
      sown('kale', day('2027-07-15'), { id: 'kale', bedId: 'e' }),
    ],
    stands: [
      cover('rye-vetch', day('2027-09-15'), { id: 'mix', bedId: 'c' }),
      cover('buckwheat', day('2027-06-10'), { id: 'buckwheat', bedId: 'c' }),
      cover('oats-field-pea', day('2027-09-01'), { id: 'oats', bedId: 'd' }),
    ],
    piles: [
      pile(day('2027-05-01'), { id: 'hot', turns: [day('2027-05-15')] }),
      pile(day('2026-05-01'), { id: 'cold', method: 'cold' }),
    ],
    topdressing: { depthMm: 13, season: 'autumn' },
  });
}

const inNorth = draftsOf(
  inputOf(
    gardenOn((day) => day, 43),
    northClimate,
  ),
);
const inSouth = new Map(draftsOf(inputOf(gardenOn(south, -43), southClimate)).map((draft) => [draft.key, draft]));

describe('the same garden in the south', () => {
  it('has the same tasks under the same keys', () => {
    expect([...inSouth.keys()].sort()).toEqual(inNorth.map(({ key }) => key).sort());
    expect(new Set(inNorth.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(10);
  });

  it('has every window half a year later, within two days', () => {
    // Two days: months differ in length, and a 29 February shares the index of the 28th.
    for (const { key, window } of inNorth) {
      const found = inSouth.get(key)?.window;
      for (const end of ['earliest', 'preferred', 'latest'] as const) {
        const off = Math.abs(daysBetween(south(window[end]), found?.[end] ?? '0001-01-01'));
        expect(off, `${key} ${end}: ${window[end]} in the north, ${found?.[end]} in the south`).toBeLessThanOrEqual(2);
      }
    }
  });

  it('asks for the same amounts', () => {
    for (const { key, supplies, effortMinutes } of inNorth) {
      expect(inSouth.get(key)?.supplies, key).toEqual(supplies);
      expect(inSouth.get(key)?.effortMinutes, key).toBe(effortMinutes);
    }
  });

  it('sows its rye with vetch in March and cuts it in November', () => {
    expect(inSouth.get('cover-sow/stand:mix')?.window.preferred.slice(0, 7)).toBe('2028-03');
    expect(inSouth.get('cover-cut/stand:mix')?.window.latest.slice(0, 4)).toBe('2028');
  });
});
