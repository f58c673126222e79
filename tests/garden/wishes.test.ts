import { expect, test } from 'vitest';
import { InputRefused } from '../../src/garden/problem.ts';
import { gardenOfFile } from '../../src/garden/project.ts';
import { readGardenFile } from '../../src/garden/read-garden-file.ts';

const file = (wishes: string) => `
garden: { name: Hollow Lane, latitude: 44.5, longitude: -88.1, timeZone: America/Chicago }
climate: { nearest: true }
beds: [{ name: North bed, lengthM: 2.4, widthM: 1.2 }]
wishes: [${wishes}]`;

const wishesOf = (wishes: string) => gardenOfFile(readGardenFile(file(wishes)), '2026-11-25', '2026-11-25').wishes;

function refused(wishes: string): string[] {
  try {
    readGardenFile(file(wishes));
  } catch (error) {
    if (error instanceof InputRefused) return error.problems.map(({ where, what, mend }) => `${where} ${what} ${mend}`);
    throw error;
  }
  return [];
}

test('a wish is for beds or for square metres, of one year or of all', () => {
  expect(wishesOf('{ crop: tomato, areaM2: 3 }, { crop: garlic, beds: 1, year: 2028 }')).toEqual([
    { cropId: 'tomato', amount: { areaM2: 3 } },
    { cropId: 'garlic', amount: { beds: 1 }, season: 2028 },
  ]);
});

test.each([
  ['an unknown crop, the nearest offered', '{ crop: tomatoe, areaM2: 3 }', 'Did you mean tomato'],
  ['both amounts', '{ crop: tomato, areaM2: 3, beds: 1 }', 'Give either beds or areaM2'],
  ['no amount', '{ crop: tomato }', 'Give either beds or areaM2'],
  ['half a bed', '{ crop: tomato, beds: 0.5 }', 'beds'],
  ['a key it does not know', '{ crop: tomato, area: 3 }', 'areaM2'],
  ['the same crop twice', '{ crop: tomato, beds: 1 }, { crop: tomato, areaM2: 3 }', 'is wished twice'],
  ['a lasting crop', '{ crop: asparagus, beds: 1 }', 'stays where it is planted'],
])('%s is refused', (_, wishes, told) => {
  expect(refused(wishes).join('\n')).toContain(told);
});

test('the same crop for every year and for one of them is no doubling', () => {
  expect(refused('{ crop: tomato, beds: 1 }, { crop: tomato, areaM2: 3, year: 2028 }')).toEqual([]);
});
