import { describe, expect, test } from 'vitest';
import { findStations } from '../../src/climate/station-search.ts';
import { US_STATES } from '../../src/handbook/us-states.ts';
import { readStationTable } from '../../src/store/station-file.ts';

const table = await readStationTable();
const names = (words: string, state = '', count = 20) =>
  findStations(table, { words, state }, count).stations.map((station) => `${station.name}, ${station.state}`);

describe('looking for a station', () => {
  test('by its name finds every place of that name, those that begin with it first', () => {
    const found = names('madison');
    expect(found[0]).toMatch(/^Madison/);
    expect(found).toContain('Madison Dane Regional Airport, WI');
    expect(found.indexOf('Madison, ME')).toBeLessThan(found.indexOf('Norris Madison PH, MT'));
  });

  test.each([
    ['madison', 'WI'],
    ['madison wi', ''],
    ['Madison, Wisconsin', ''],
    ['dane MADISON wisconsin', ''],
  ])('"%s" in "%s" finds the one in Wisconsin alone', (words, state) => {
    expect(names(words, state)).toEqual(['Madison Dane Regional Airport, WI']);
  });

  test('a state of two words may stand behind the name, and a state alone lists its stations', () => {
    expect(names('concord new hampshire').every((name) => name.endsWith('NH'))).toBe(true);
    expect(names('', 'RI')).toHaveLength(8);
    expect(names('hampshire')).toEqual(names('Hampshire', ''));
  });

  test('hands out so many and says how many more there are', () => {
    const { stations, more } = findStations(table, { words: '', state: 'TX' }, 20);
    expect([stations.length, more]).toEqual([20, 384]);
  });

  test('finds nothing where nothing is asked, or nothing is called so', () => {
    expect([names(''), names('zzyzx'), names("o'")]).toEqual([[], [], expect.any(Array)]);
  });
});

test('every state of the table has a name, and every name stands in the table', () => {
  const inTable = new Set(table.map(({ state }) => state));
  expect([...inTable].sort()).toEqual(Object.keys(US_STATES).sort());
});
