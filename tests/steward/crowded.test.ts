import { describe, expect, test } from 'vitest';
import { InputRefused } from '../../src/garden/problem.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { doubtsOf } from '../../src/steward/doubts/doubts.ts';
import { northernFile } from './gardens.ts';
import { household } from './household.ts';

type Row = Record<string, unknown>;

/** Beds of 3.6 m², planned on 20 April 2027. */
const fileWith = (...plantings: Row[]) => northernFile({ plantings, coverStands: [] });

async function refusals(...plantings: Row[]): Promise<string[]> {
  const refused = await household(fileWith(...plantings)).catch((error: unknown) => error);
  if (!(refused instanceof InputRefused)) return [];
  return refused.problems.map(({ where, what, mend }) => `${where}: ${what} ${mend}`);
}

const tomatoes = { id: 'tomatoes', bed: 'north', crop: 'tomato', setOut: '2027-05-29', lastHarvest: '2027-09-20' };
const lettuce = { id: 'lettuce', bed: 'north', crop: 'lettuce-leaf', sow: '2027-06-20' };

describe('two crops planned for one bed at once', () => {
  test('are refused with both crops, both days, and how shares are written', async () => {
    expect(await refusals(tomatoes, lettuce)).toEqual([
      'plantings[1].sow: Leaf lettuce is sown in north bed on June 20, 2027, and tomato stands there from May 29, 2027 ' +
        'until September 20, 2027. Each has the whole bed. Give another bed or day. Crops side by side, or one between ' +
        'the rows of the other, each want their share of the bed as areaM2, such as areaM2: 1.8; together no more than 3.6 m².',
    ]);
  });

  test('are taken where their shares fit together', async () => {
    expect(await refusals({ ...tomatoes, areaM2: 2.4 }, { ...lettuce, areaM2: 1.2 })).toEqual([]);
  });

  test('are refused where their shares are more than the bed, or only one has a share', async () => {
    const [over] = await refusals({ ...tomatoes, areaM2: 2.4 }, { ...lettuce, areaM2: 1.5 });
    expect(over).toContain('Together they want 42 sq ft, and the bed has 39 sq ft.');
    expect(await refusals(tomatoes, { ...lettuce, areaM2: 1 })).toHaveLength(1);
  });

  test('are refused on the same day, whichever is written first', async () => {
    const together = { ...lettuce, sow: '2027-05-29' };
    expect(await refusals(tomatoes, together)).toHaveLength(1);
    expect(await refusals(together, tomatoes)).toHaveLength(1);
  });

  test('follow one another on the day of the last harvest', async () => {
    expect(await refusals({ ...tomatoes, lastHarvest: '2027-06-20' }, lettuce)).toEqual([]);
  });

  test('are refused before the quickest kinds of the first may be ripe, where no last harvest is told', async () => {
    const early = { id: 'beans', bed: 'north', crop: 'snap-bean', sow: '2027-05-25' };
    const [soon] = await refusals(early, lettuce);
    expect(soon).toMatch(/snap bean.* stands there from May 25, 2027 until at least July \d+, 2027/);
    expect(await refusals(early, { ...lettuce, sow: '2027-08-01' })).toEqual([]);
  });

  test('are refused beside a lasting crop', async () => {
    const [kept] = await refusals({ bed: 'north', crop: 'asparagus', setOut: '2020-05-01' }, lettuce);
    expect(kept).toContain('asparagus stands there from May 1, 2020 for good');
  });

  test('are no two where they are sowings of the same crop', async () => {
    expect(await refusals(lettuce, { ...lettuce, id: 'again', sow: '2027-07-04' })).toEqual([]);
  });
});

describe('two crops of one bed in the past', () => {
  const past = [
    { id: 'old', bed: 'north', crop: 'tomato', setOut: '2026-05-29', lastHarvest: '2026-09-20' },
    { id: 'between', bed: 'north', crop: 'lettuce-leaf', sow: '2026-06-20', lastHarvest: '2026-08-20' },
  ];

  test('are doubted and taken', async () => {
    const { steward, garden } = await household(fileWith(...past));
    const view = await steward.view(garden);
    expect(doubtsOf(fileWith(...past), view).map(({ where }) => where)).toEqual(['plantings[1].sow']);
  });

  test('are not doubted where their shares fit', async () => {
    const file = fileWith({ ...past[0], areaM2: 2 }, { ...past[1], areaM2: 1.6 });
    const { steward, garden } = await household(file);
    expect(doubtsOf(file, await steward.view(garden))).toEqual([]);
  });
});

test('a crop that is pushed late by work done late does not make its file unreadable', async () => {
  const { steward, garden } = await household(
    fileWith(
      { id: 'peas', bed: 'north', crop: 'pea', sow: '2027-04-18', lastHarvest: '2027-06-20' },
      { id: 'kale', bed: 'north', crop: 'kale', setOut: '2027-06-25' },
    ),
  );
  const { plan } = await steward.view(garden);
  const clearing = plan.tasks.find(({ key }) => key === 'bed-clear/planting:peas');
  expect(clearing?.state).toBe('open');
  const late = northernFile({
    plantings: [
      { id: 'peas', bed: 'north', crop: 'pea', sow: '2027-04-18', lastHarvest: '2027-07-10', planned: [] },
      { id: 'kale', bed: 'north', crop: 'kale', setOut: '2027-06-25', planned: ['setOut'] },
    ],
    coverStands: [],
  });
  const after = await household(late, '2027-07-12T13:00:00.000Z').catch((error: unknown) => error);
  expect(after).not.toBeInstanceOf(InputRefused);
});

describe('a share of a bed', () => {
  const check = (planting: Row) => () => checkGardenFile({ ...northernFile(), plantings: [planting] });

  test('is refused where it is larger than the bed', () => {
    expect(check({ bed: 'north', crop: 'kale', setOut: '2027-05-01', areaM2: 3.7 })).toThrow(
      expect.objectContaining({
        problems: [
          expect.objectContaining({
            where: 'plantings[0].areaM2',
            what: '3.7 m² (40 sq ft) is more than north bed has: 3.6 m² (39 sq ft).',
          }),
        ],
      }),
    );
    expect(check({ bed: 'north', crop: 'kale', setOut: '2027-05-01', areaM2: 3.6 })).not.toThrow();
  });

  test('dates reversed are refused', () => {
    expect(check({ bed: 'north', crop: 'kale', setOut: '2027-05-01', lastHarvest: '2027-04-01' })).toThrow(
      expect.objectContaining({
        problems: [
          expect.objectContaining({ mend: 'Give a lastHarvest that is not before the sowing or setting out.' }),
        ],
      }),
    );
  });

  test('an unknown crop is refused with the nearest names', () => {
    expect(check({ bed: 'north', crop: 'tomatoe', setOut: '2027-05-01' })).toThrow(
      expect.objectContaining({ problems: [expect.objectContaining({ mend: expect.stringContaining('tomato') })] }),
    );
  });
});

test('everything that is wrong with the plantings is told at once', () => {
  const plantings = [
    { bed: 'north', crop: 'tomatoe', setOut: '2027-05-29' },
    { bed: 'north', crop: 'carrot', sow: '2027-06-05', lastHarvest: '2027-05-01' },
    { bed: 'north', crop: 'kale', setOut: '2027-06-05', areaM2: 4 },
  ];
  const refused = (() => {
    try {
      return checkGardenFile({ ...northernFile(), plantings });
    } catch (error) {
      return error;
    }
  })();
  const places = refused instanceof InputRefused ? refused.problems.map(({ where }) => where) : [];
  expect(places.sort()).toEqual(['plantings[0].crop', 'plantings[1].lastHarvest', 'plantings[2].areaM2']);
});
