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

  test.each([
    ['Charleston West Virginia', /^Charleston.*, WV$/],
    ['Fort Collins', /^(Fort|Ft) Collins.*, CO$/],
    ['Ft Collins', /^(Fort|Ft) Collins.*, CO$/],
    ['Saint Louis', /\b(St|Saint) Louis\b/],
    ['Mount Vernon', /^(Mt|Mount) Vernon/],
    ['Madison, Wisconsin, USA', /^Madison.*, WI$/],
  ])('"%s" finds what is written otherwise in the table', (words, name) => {
    const found = names(words);
    expect(found.length).toBeGreaterThan(0);
    for (const each of found) expect(each).toMatch(name);
  });

  test('a state alone lists its stations, behind the places called after it', () => {
    expect(names('RI', '', 500)).toEqual(names('', 'RI', 500));
    const nevada = names('Nevada', '', 500);
    expect(nevada.filter((name) => name.endsWith(', NV'))).toHaveLength(names('', 'NV', 500).length);
    expect(nevada.slice(0, 1)).toEqual([expect.stringMatching(/^Nevada/)]);
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
