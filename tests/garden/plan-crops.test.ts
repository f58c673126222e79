import { describe, expect, test } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { importDifferences } from '../../src/garden/file-difference.ts';
import type { Garden } from '../../src/garden/garden.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { done, exampleData, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const CARROTS = { id: 'north-bed-carrot-2028-05-20', bedId: 'north-bed', cropId: 'carrot' };
const PEAS = { id: 'south-bed-pea-2028-04-15', bedId: 'south-bed', cropId: 'pea' };

type Planned = Extract<Fact, { kind: 'plantings-planned' }>;

const peas = (day: string, areaM2?: number): Planned['plantings'][number] => ({
  ...PEAS,
  start: { how: 'sow', day },
  ...(areaM2 === undefined ? {} : { areaM2 }),
});
const planned = (plantings: Planned['plantings'], dropped: Planned['dropped'] = []): Fact => ({
  kind: 'plantings-planned',
  plantings,
  dropped,
});
const wished = (cropId: string, beds = 1): Fact => ({ kind: 'crop-wished', cropId, amount: { beds }, season: 2028 });
const unwished = (cropId: string): Fact => ({ kind: 'wish-dropped', cropId, season: 2028 });
const undone = (entry: number): Fact => ({ kind: 'entry-undone', entry });

/** Carrots of last year stand in the history, and next year's are planned. */
const file = (change: Record<string, unknown> = {}): GardenFile =>
  exampleFile({
    plantings: [
      { bed: 'North bed', crop: 'carrot', sow: '2027-05-20', lastHarvest: '2027-09-10' },
      { bed: 'North bed', crop: 'carrot', sow: '2028-05-20', areaM2: 1.4 },
    ],
    wishes: [{ crop: 'kale', areaM2: 2 }],
    ...change,
  });

const ledger = (...facts: Fact[]) =>
  ledgerOf(['2027-12-01', imported(file())], ...facts.map((fact) => ['2027-12-02', fact] as [string, Fact]));
const gardenAfter = (...facts: Fact[]): Garden => gardenOf(ledger(...facts));
const meant = ({ plantings }: Garden): string[] =>
  plantings.filter(({ start }) => !start.happened).map(({ cropId, start }) => `${cropId} ${start.day}`);

describe('a plan of crops', () => {
  test('adds what is meant, and takes out what is not meant any more, as one', () => {
    expect(meant(gardenAfter(planned([peas('2028-04-15')], [CARROTS])))).toEqual(['pea 2028-04-15']);
  });

  test('is taken back as one', () => {
    const undo: Fact = { kind: 'entry-undone', entry: 2 };
    expect(gardenAfter(planned([peas('2028-04-15')], [CARROTS]), undo)).toEqual(gardenAfter());
  });

  test('keeps the share of the bed, and the whole bed where none is told', () => {
    const shares = (garden: Garden) => garden.plantings.map(({ areaM2 }) => areaM2);
    expect(shares(gardenAfter(planned([peas('2028-04-15', 1.5)])))).toEqual([undefined, 1.4, 1.5]);
    expect(shares(gardenAfter(planned([peas('2028-04-15')])))).toEqual([undefined, 1.4, undefined]);
  });

  test('changes a planned crop where the new one has its id and the old is dropped', () => {
    const changed = gardenAfter(planned([peas('2028-04-15')]), planned([peas('2028-04-25', 1)], [PEAS]));
    expect(meant(changed)).toEqual(['carrot 2028-05-20', 'pea 2028-04-25']);
  });

  test('never takes out what is in the ground', () => {
    const grown = { ...CARROTS, id: 'north-bed-carrot-2027-05-20' };
    expect(gardenAfter(planned([], [grown])).plantings).toHaveLength(2);
    const sown = done('2028-04-15', `sow/planting:${PEAS.id}`, { makes: 'planting-started', plantingId: PEAS.id });
    expect(gardenAfter(planned([peas('2028-04-15')]), sown, planned([], [PEAS])).plantings).toHaveLength(3);
  });

  test('asks for all its work, whatever was skipped, pinned or put off of it as it was planned before', () => {
    const key = `sow/planting:${CARROTS.id}`;
    const skip: Fact = { kind: 'tasks-skipped', on: '2027-12-02', tasks: [{ key, title: 'Sow' }] };
    const pin: Fact = { kind: 'day-pinned', key, title: 'Sow', day: '2028-05-22' };
    const off: Fact = { kind: 'put-off', tasks: [{ key, title: 'Sow' }], on: '2028-05-20' };
    const after = gardenAfter(skip, off, pin, off, planned([], [CARROTS]));
    expect([after.skipped, after.pins, after.putOff]).toEqual([{}, {}, {}]);
  });

  test('says nothing of beds that are not there', () => {
    expect(meant(gardenAfter(planned([{ ...peas('2028-04-15'), bedId: 'no-bed' }])))).toEqual(['carrot 2028-05-20']);
  });
});

describe('wishes that are told', () => {
  const wishes = (...facts: Fact[]): string[] =>
    gardenAfter(...facts).wishes.map(({ cropId, amount }) => `${cropId} ${Object.values(amount)}`);

  test('stand beside those before, in the place of one of the same crop and season', () => {
    expect(wishes(wished('tomato'), wished('pea'), wished('tomato', 2))).toEqual(['kale 2', 'pea 1', 'tomato 2']);
    expect(gardenFileOf(gardenAfter(wished('tomato'))).wishes).toContainEqual({ crop: 'tomato', beds: 1, year: 2028 });
  });

  test('are taken off one by one, that of every season apart from that of one', () => {
    expect(wishes(wished('tomato'), unwished('tomato'))).toEqual(['kale 2']);
    expect(wishes(unwished('kale'))).toEqual(['kale 2']);
    expect(wishes({ kind: 'wish-dropped', cropId: 'kale' })).toEqual([]);
  });

  test('are taken back one by one, the older before the newer too', () => {
    expect(wishes(wished('tomato'), wished('pea'), undone(2))).toEqual(['kale 2', 'pea 1']);
    expect(wishes(wished('tomato'), wished('tomato', 2), undone(3))).toEqual(['kale 2', 'tomato 1']);
    expect(wishes(wished('tomato'), unwished('tomato'), undone(3))).toEqual(['kale 2', 'tomato 1']);
  });

  test('give way to a later file that tells any, and stay with one that tells none', () => {
    const later = (change: Record<string, unknown>) => wishes(wished('tomato'), imported(file(change)));
    expect(later({ wishes: [{ crop: 'pea', beds: 1 }] })).toEqual(['pea 1']);
    expect(later({ wishes: [] })).toEqual(['tomato 1']);
    expect(wishes(imported(file()), wished('tomato'))).toEqual(['kale 2', 'tomato 1']);
  });
});

describe('a file brought in over a plan that was taken', () => {
  const facts = [planned([peas('2028-04-15', 1.5)], [CARROTS]), wished('tomato')];

  test('says nothing new where it is the file exported', () => {
    const held = gardenAfter(...facts);
    const entries = [...ledger(...facts), ...ledgerOf(['2027-12-05', imported(gardenFileOf(held))])];
    const again = entries.map((entry, at) => ({ ...entry, entry: at + 1 }));
    const { plantings, ...rest } = gardenOf(again);
    expect({ ...rest, plantings: [...plantings].sort((a, b) => (a.id < b.id ? -1 : 1)) }).toEqual({
      ...held,
      plantings: [...held.plantings].sort((a, b) => (a.id < b.id ? -1 : 1)),
    });
  });

  test('keeps the plan, and says where the file stands against it', () => {
    const terms = { prefer: 'reported', readOn: '2027-12-05' } as const;
    const kept = importDifferences(ledger(...facts), file(), terms)?.filter(({ keeps }) => keeps === 'reported');
    expect(kept?.map(({ path }) => path)).toEqual([`plantings.${PEAS.id}`, `plantings.${CARROTS.id}`]);
  });

  test('takes its place where the file is preferred', () => {
    const entries = [...ledger(...facts), ...ledgerOf(['2027-12-05', imported(file(), 'file')])];
    const preferred = gardenOf(entries.map((entry, at) => ({ ...entry, entry: at + 1 })));
    expect(meant(preferred)).toEqual(['carrot 2028-05-20']);
    expect(preferred.wishes).toEqual([{ cropId: 'kale', amount: { areaM2: 2 } }]);
  });
});

test('a share of a bed is read, checked and written out', () => {
  const [planting] = file({
    plantings: [{ bed: 'North bed', crop: 'kale', setOut: '2028-05-01', areaM2: 0.7 }],
  }).plantings;
  expect(planting?.areaM2).toBe(0.7);
  expect(() =>
    exampleFile({ ...exampleData(), plantings: [{ bed: 'North bed', crop: 'kale', setOut: '2028-05-01', areaM2: 0 }] }),
  ).toThrow('one problem');
});
