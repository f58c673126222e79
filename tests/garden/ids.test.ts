import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { slug } from '../../src/garden/ids.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { exampleData, exampleFile } from './example-garden.ts';

describe('an id made from words', () => {
  it.each([
    ['North bed', 'north-bed'],
    ["Ann's bed №3", 'anns-bed-no3'],
    ['Über-Beet', 'uber-beet'],
    ['  --  ', 'unnamed'],
    ['北', 'unnamed'],
  ])('%j gives %s', (words, id) => {
    expect(slug(words)).toBe(id);
  });

  it('fits the shape an id must have, whatever the words', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (words) => {
        expect(slug(words)).toMatch(/^[a-z0-9][a-z0-9_.-]{0,79}$/);
      }),
    );
  });
});

describe('ids of a first file', () => {
  it('come from bed, crop and date; bed, cover and date; bin and date', () => {
    const file = exampleFile();
    expect(file.garden.id).toBe('hollow-lane');
    expect(file.plantings[0]?.id).toBe('north-bed-carrot-2027-05-20');
    expect(file.coverStands[0]?.id).toBe('north-bed-oats-2027-09-15');
    expect(file.piles[0]?.id).toBe('left-bay-2027-05-01');
  });

  it('stay as they are given', () => {
    const beds = [{ id: 'n1', name: 'North bed', lengthM: 2.4, widthM: 1.2 }];
    expect(exampleFile({ beds }).plantings[0]).toMatchObject({ bed: 'n1', id: 'n1-carrot-2027-05-20' });
  });

  it('give way to names: a bed is found by its name before another is found by an id made up for it', () => {
    const beds = ['Bed', 'bed'].map((name) => ({ name, lengthM: 2, widthM: 1 }));
    const plantings = [{ bed: 'bed', crop: 'carrot', sow: '2027-05-20' }];
    const file = exampleFile({ beds, plantings, coverStands: [] });
    expect(file.beds.find(({ id }) => id === file.plantings[0]?.bed)?.name).toBe('bed');
  });

  it('never meet, though the words do', () => {
    const beds = ['Bed', 'bed', 'BED'].map((name) => ({ name, lengthM: 2, widthM: 1 }));
    const file = exampleFile({ beds, plantings: [], coverStands: [] });
    expect(file.beds.map(({ id }) => id).sort()).toEqual(['bed', 'bed-2', 'bed-3']);
  });
});

/** A file with many items that are easily taken for each other. */
function crowdedData() {
  const names = ['Bed', 'bed', 'Bed.', 'Long bed', '東', '西'];
  const beds = names.map((name, index) => ({ name, lengthM: 2 + index, widthM: 1 }));
  const plantings = names.flatMap((bed) => [
    { bed, crop: 'carrot', sow: '2027-05-20' },
    { bed, crop: 'carrot', sow: '2027-05-20', lastHarvest: '2027-09-01' },
    { bed, crop: 'tomato', setOut: '2027-05-20' },
  ]);
  const coverStands = names.map((bed) => ({ bed, mix: 'rye-vetch', sow: '2027-09-10' }));
  return { ...exampleData(), beds, plantings, coverStands };
}

/** Which id every item has, told by everything else the item says. */
function idsByContent(file: GardenFile): string[] {
  const nameOf = new Map(file.beds.map(({ id, name }) => [id, name]));
  const items = [
    ...file.beds,
    ...[...file.plantings, ...file.coverStands].map((row) => ({ ...row, bed: nameOf.get(row.bed) })),
  ];
  return items.map((item) => JSON.stringify(item)).sort();
}

const shuffled = <Item>(items: Item[]) => fc.shuffledSubarray(items, { minLength: items.length });

describe('the order of a file', () => {
  it('does not matter to any id', () => {
    const data = crowdedData();
    const first = idsByContent(checkGardenFile(data));
    fc.assert(
      fc.property(
        shuffled(data.beds),
        shuffled(data.plantings),
        shuffled(data.coverStands),
        (beds, plantings, stands) => {
          expect(idsByContent(checkGardenFile({ ...data, beds, plantings, coverStands: stands }))).toEqual(first);
        },
      ),
    );
  });

  it('does not matter when the file is brought in again', () => {
    const data = crowdedData();
    const held = checkGardenFile(data);
    fc.assert(
      fc.property(shuffled(data.beds), shuffled(data.plantings), (beds, plantings) => {
        expect(idsByContent(checkGardenFile({ ...data, beds, plantings }, held))).toEqual(idsByContent(held));
      }),
    );
  });
});

describe('ids of a file brought in again', () => {
  it('are those its items had', () => {
    const held = exampleFile({ garden: { ...exampleData().garden, id: 'g1' }, beds: withIds('n1', 's1') });
    const again = checkGardenFile(exampleData(), held);
    expect(again.garden.id).toBe('g1');
    expect(again.beds.map(({ id }) => id)).toEqual(['n1', 's1']);
    expect(again.plantings).toEqual(held.plantings);
  });

  it('may be used for a bed that the file only names', () => {
    const held = exampleFile({ beds: withIds('n1', 's1') });
    const plantings = [{ bed: 's1', crop: 'carrot', sow: '2027-05-20' }];
    expect(checkGardenFile({ ...exampleData(), plantings }, held).plantings[0]?.bed).toBe('s1');
  });

  it('are not taken by a new item that stands before the old one', () => {
    const held = exampleFile();
    const newcomer = { name: 'North-bed', lengthM: 1, widthM: 1 };
    const beds = checkGardenFile({ ...exampleData(), beds: [newcomer, ...exampleData().beds] }, held).beds;
    expect(beds.map(({ name, id }) => `${name}: ${id}`)).toEqual([
      'North-bed: north-bed-2',
      'North bed: north-bed',
      'South bed: south-bed',
    ]);
  });

  it('stay with a planting whose dates were changed under its id', () => {
    const held = exampleFile();
    const plantings = [{ ...held.plantings[0], sow: '2027-05-25' }];
    expect(checkGardenFile({ ...exampleData(), plantings }, held).plantings[0]?.id).toBe('north-bed-carrot-2027-05-20');
  });
});

function withIds(...ids: string[]) {
  return exampleData().beds.map((bed, index) => ({ id: ids[index], ...bed }));
}
