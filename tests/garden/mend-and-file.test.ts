import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import type { Day } from '../../src/measures/days.ts';
import { done, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';
import { mended, withFact } from './mends.ts';

const CARROT = 'north-bed-carrot-2027-05-20';
const OATS = 'north-bed-oats-2027-04-01';

const brought = (change: Record<string, unknown> = {}) => ledgerOf(['2027-06-01', imported(exampleFile(change))]);
const fileIn = (ledger: readonly LedgerEntry[]) => gardenFileOf(gardenOf(ledger));
const broughtAgain = (ledger: readonly LedgerEntry[], day: Day, change: Record<string, unknown> = {}) =>
  withFact(ledger, day, imported(checkGardenFile({ ...fileIn(ledger), ...change })));

describe('wishes that were mended', () => {
  const wishing = mended(brought(), '2027-06-02', { list: 'wishes', row: { crop: 'tomato', beds: 1 } });

  it('give way to a later file that tells any', () => {
    const tomato = withFact(wishing, '2027-06-03', imported(exampleFile({ wishes: [{ crop: 'tomato', beds: 2 }] })));
    expect(fileIn(tomato).wishes).toEqual([{ crop: 'tomato', beds: 2 }]);
    const carrot = withFact(wishing, '2027-06-03', imported(exampleFile({ wishes: [{ crop: 'carrot', beds: 2 }] })));
    expect(fileIn(carrot).wishes).toEqual([{ crop: 'carrot', beds: 2 }]);
  });

  it('stay where a later file tells none', () => {
    expect(fileIn(withFact(wishing, '2027-06-03', imported(exampleFile()))).wishes).toEqual([
      { crop: 'tomato', beds: 1 },
    ]);
  });
});

describe('a soil sample', () => {
  it('goes with the bed it was taken in', () => {
    const row = { name: 'Third bed', lengthM: 2, widthM: 1 };
    const added = mended(brought(), '2027-06-02', { list: 'beds', row });
    const sampled = withFact(
      added,
      '2027-06-03',
      done('2027-06-03', 'sample', { makes: 'soil-sampled', bedId: 'third-bed' }),
    );
    expect(fileIn(sampled).soilTests).toEqual([{ on: '2027-06-03', bed: 'third-bed' }]);
    const undone = withFact(sampled, '2027-06-04', { kind: 'entry-undone', entry: 2 });
    expect(fileIn(undone).soilTests).toEqual([]);
  });

  it('of the whole garden stays', () => {
    const sampled = withFact(brought(), '2027-06-03', done('2027-06-03', 'sample', { makes: 'soil-sampled' }));
    expect(fileIn(sampled).soilTests).toEqual([{ on: '2027-06-03' }]);
  });
});

describe('a fertiliser strewn for a planting', () => {
  const strewn = { makes: 'bed-fed', bedId: 'north-bed', fertiliserId: 'blood_meal', grams: 60 } as const;

  it('counts once where the planting was taken out and the file is brought in again', () => {
    const fed = withFact(brought(), '2027-06-02', done('2027-06-02', 'fed', { ...strewn, plantingId: CARROT }));
    const out = mended(fed, '2027-06-03', { list: 'plantings', id: CARROT });
    expect(fileIn(out).fed).toHaveLength(1);
    expect(fileIn(broughtAgain(out, '2027-06-04')).fed).toEqual(fileIn(out).fed);
  });

  it('counts twice where it was strewn for two', () => {
    const twice = ledgerOf(
      ['2027-06-01', imported(exampleFile())],
      ['2027-06-02', done('2027-06-02', 'fed', { ...strewn, plantingId: CARROT })],
      ['2027-06-02', done('2027-06-02', 'fed', strewn)],
    );
    expect(fileIn(twice).fed).toHaveLength(2);
    expect(fileIn(broughtAgain(twice, '2027-06-04')).fed).toHaveLength(2);
  });
});

describe('two layers of one day told alike', () => {
  it('keep the pile each was reported from', () => {
    const layer = { bed: 'North bed', on: '2027-06-08', litres: 60 };
    const spread = (pileId: string) =>
      done('2027-06-08', `from ${pileId}`, {
        makes: 'bed-topdressed',
        bedId: 'north-bed',
        litres: 60,
        pileIds: [pileId],
      });
    const bins = ['Left bay', 'Right bay'].map((name) => ({ name, volumeL: 760 }));
    const piles = bins.map(({ name }) => ({ bin: name, built: '2027-05-01', method: 'hot', ingredients: [] }));
    const [left, right] = ['left-bay-2027-05-01', 'right-bay-2027-05-01'];
    const ledger = ledgerOf(
      ['2027-06-01', imported(exampleFile({ bins, piles, topdressed: [layer, layer] }))],
      ['2027-06-08', spread(left ?? '')],
      ['2027-06-08', spread(right ?? '')],
    );
    expect(fileIn(ledger).topdressed.map((row) => row.piles)).toEqual([[left], [right]]);
  });
});

describe('a date that was reported, corrected and then taken back', () => {
  it('is gone with what reported it', () => {
    const told = brought({ coverStands: [{ bed: 'North bed', cover: 'oats', sow: '2027-04-01' }] });
    const cut = withFact(told, '2027-06-02', done('2027-06-02', 'cut', { makes: 'stand-cut', standId: OATS }));
    const [row] = fileIn(cut).coverStands;
    const moved = mended(cut, '2027-06-03', { list: 'coverStands', id: OATS, row: { ...row, cut: '2027-06-01' } });
    expect(gardenOf(moved).stands[0]?.cutOn).toBe('2027-06-01');
    const undone = withFact(moved, '2027-06-04', { kind: 'entry-undone', entry: 2 });
    expect(gardenOf(undone).stands[0]?.cutOn).toBeUndefined();
  });

  it('is gone with what reported a pile finished, its litres with it', () => {
    const id = 'left-bay-2027-05-01';
    const finished = withFact(
      brought(),
      '2027-06-02',
      done('2027-06-02', 'finish', { makes: 'pile-finished', pileId: id, litres: 200 }),
    );
    const [row] = fileIn(finished).piles;
    const is = { ...row, finished: '2027-06-01', finishedLitres: 180 };
    const moved = mended(finished, '2027-06-03', { list: 'piles', id, row: is });
    const [pile] = fileIn(withFact(moved, '2027-06-04', { kind: 'entry-undone', entry: 2 })).piles;
    expect([pile?.finished, pile?.finishedLitres]).toEqual([undefined, undefined]);
  });
});

describe('later sowings of a crop', () => {
  it('never have the id of one that was taken out', () => {
    const again = { everyDays: 14, times: 1 };
    const told = brought({ plantings: [{ id: 'c', bed: 'North bed', crop: 'carrot', sow: '2027-06-20', again }] });
    const out = mended(told, '2027-06-02', { list: 'plantings', id: 'c-2' });
    const [row] = fileIn(out).plantings;
    const sownAgain = { ...row, again: { everyDays: 20, times: 2 } };
    const twice = mended(out, '2027-06-03', { list: 'plantings', id: 'c', row: sownAgain });
    const ids = gardenOf(twice).plantings.map(({ id }) => id);
    expect(ids).toHaveLength(3);
    expect(ids).not.toContain('c-2');
    const back = withFact(twice, '2027-06-04', { kind: 'entry-undone', entry: 2 });
    expect(gardenOf(back).plantings.map(({ start }) => start.day)).toEqual([
      '2027-06-20',
      '2027-07-04',
      '2027-07-10',
      '2027-07-30',
    ]);
  });
});

describe('a row that was added and a later file tells otherwise', () => {
  it.each([
    ['away', { from: '2027-07-01', to: '2027-07-05' }, { from: '2027-07-01', to: '2027-07-09' }],
    ['gear', { what: 'heavy-fabric', areaM2: 6 }, { what: 'heavy-fabric', areaM2: 8 }],
    [
      'topdressed',
      { bed: 'north-bed', on: '2027-05-30', litres: 60 },
      { bed: 'north-bed', on: '2027-05-30', litres: 70 },
    ],
    [
      'seeds',
      { crop: 'carrot', packed: 2027, grams: 5, on: '2027-05-01' },
      { crop: 'carrot', packed: 2027, grams: 3, on: '2027-05-30' },
    ],
    [
      'coldNights',
      { evening: '2027-05-30', lowC: 1, how: 'expected' },
      { evening: '2027-05-30', lowC: 0, how: 'expected' },
    ],
  ] as const)('is there once, as the file tells it: %s', (list, row, other) => {
    const added = mended(brought(), '2027-06-02', { list, row });
    expect(fileIn(added)[list]).toEqual([row]);
    expect(fileIn(broughtAgain(added, '2027-06-03', { [list]: [other] }))[list]).toEqual([other]);
  });
});

describe('a bed still to be made', () => {
  it('is so again once the planting that showed it there is taken out', () => {
    const bed = { name: 'New bed', lengthM: 3, widthM: 1, depthM: 0.3, plannedFor: '2027-06-20' };
    const told = brought({ beds: [{ name: 'North bed', lengthM: 2.4, widthM: 1.2 }, bed] });
    const row = { bed: 'new-bed', crop: 'carrot', sow: '2027-06-22' };
    const sown = mended(told, '2027-06-25', { list: 'plantings', row });
    expect(gardenOf(sown).beds[1]?.filledOn).toBe('2027-06-22');
    const widened = mended(sown, '2027-06-25', {
      list: 'beds',
      id: 'new-bed',
      row: { ...gardenOf(sown).beds[1], widthM: 1.1 },
    });
    expect(gardenOf(widened).beds[1]).toMatchObject({ widthM: 1.1, filledOn: '2027-06-22' });
    const out = mended(widened, '2027-06-26', { list: 'plantings', id: 'new-bed-carrot-2027-06-22' });
    expect(gardenOf(out).beds[1]).toMatchObject({ widthM: 1.1 });
    expect(gardenOf(out).beds[1]?.filledOn).toBeUndefined();
  });

  it('keeps a filling that was mended', () => {
    const bed = { name: 'New bed', lengthM: 3, widthM: 1, depthM: 0.3, plannedFor: '2027-06-20' };
    const told = brought({ beds: [{ name: 'North bed', lengthM: 2.4, widthM: 1.2 }, bed] });
    const row = { bed: 'new-bed', crop: 'carrot', sow: '2027-06-22' };
    const sown = mended(told, '2027-06-25', { list: 'plantings', row });
    const filled = { ...gardenOf(sown).beds[1], filledOn: '2027-06-21' };
    const out = mended(mended(sown, '2027-06-25', { list: 'beds', id: 'new-bed', row: filled }), '2027-06-26', {
      list: 'plantings',
      id: 'new-bed-carrot-2027-06-22',
    });
    expect(gardenOf(out).beds[1]?.filledOn).toBe('2027-06-21');
  });
});

describe('a bed taken out into which a later file puts something new', () => {
  it('is there again, with it', () => {
    const out = mended(brought(), '2027-06-02', { list: 'beds', id: 'south-bed' });
    const plantings = [{ bed: 'South bed', crop: 'tomato', setOut: '2027-06-10' }];
    const again = withFact(out, '2027-06-03', imported(exampleFile({ plantings })));
    expect(gardenOf(again).beds.map(({ id }) => id)).toContain('south-bed');
    expect(gardenOf(again).plantings.map(({ bedId }) => bedId)).toEqual(['south-bed']);
  });
});
