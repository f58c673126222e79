/**
 * What the garden file's schema lets its keys be, as forms ask for it.
 */
import { describe, expect, test } from 'vitest';
import { isRowOf, limitsOf } from '../../src/garden/file-limits.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';

const file = (lengthM: number) => ({
  garden: { name: 'Mill Row', latitude: 43.1, longitude: -89.4, timeZone: 'America/Chicago' },
  climate: { nearest: true },
  beds: [{ name: 'North bed', lengthM, widthM: 1.2 }],
});

describe('the limits of a key', () => {
  test('are the very ones the file is checked by', () => {
    const { least = 0, most = 0, required } = limitsOf('beds', 'lengthM');
    expect(required).toBe(true);
    for (const allowed of [least, most]) expect(() => checkGardenFile(file(allowed))).not.toThrow();
    for (const refused of [least - 0.01, most + 0.01]) expect(() => checkGardenFile(file(refused))).toThrow();
  });

  test('reach into logs and into keys within keys', () => {
    expect(limitsOf('coverStands', 'seed.grams')).toEqual({ required: true, least: 0, most: 100_000 });
    expect(limitsOf('plantings', 'again.times')).toMatchObject({ required: true, least: 1, most: 26 });
  });

  test('say that what has a usual value, or may be left out, need not be given', () => {
    expect(limitsOf('beds', 'raised').required).toBe(false);
    expect(limitsOf('plantings', 'lastHarvest').required).toBe(false);
  });

  test('are none for what is no key of the file', () => {
    expect(limitsOf('beds', 'gnomes')).toEqual({ required: false });
    expect(limitsOf('beds', 'name.first')).toEqual({ required: false });
  });
});

test('a row is told from what only looks like one', () => {
  expect(isRowOf('beds', { name: 'North bed', lengthM: 2.4, widthM: 1.2 })).toBe(true);
  expect(isRowOf('beds', { name: 'North bed', lengthM: 900, widthM: 1.2 })).toBe(false);
  expect(isRowOf('topdressing', { depthMm: 13, season: 'autumn' })).toBe(true);
  expect(isRowOf('mulches', [])).toBe(false);
});
