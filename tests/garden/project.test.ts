import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { projectGarden, standingEntries } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { done, exampleData, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const STAND = 'north-bed-oats-2027-09-15';
const CARROTS = 'north-bed-carrot-2027-05-20';
const PILE = 'left-bay-2027-05-01';

const undo = (entry: number): Fact => ({ kind: 'entry-undone', entry });
const sown = (on: string): Fact =>
  done(on, `cover-sow/stand:${STAND}`, { makes: 'stand-sown', standId: STAND, bedId: 'north-bed', coverId: 'oats' });
const turned = (on: string): Fact => done(on, 'pile-turn', { makes: 'pile-turned', pileId: PILE });
const read = (on: string, tempC: number): Fact => ({ kind: 'pile-read', pileId: PILE, on, tempC });

/** The garden brought in on 1 June 2027, with facts after it. */
const gardenAfter = (...facts: (readonly [string, Fact])[]) =>
  gardenOf(ledgerOf(['2027-06-01', imported(exampleFile())], ...facts));

describe('a garden from its file', () => {
  it('is nothing until a file is brought in', () => {
    expect(projectGarden([])).toBeUndefined();
    expect(projectGarden(ledgerOf(['2027-06-01', sown('2027-06-01')]))).toBeUndefined();
  });

  it('takes dates up to the day of reading as happened and later ones as plans', () => {
    const garden = gardenAfter();
    expect(garden.startedOn).toBe('2027-06-01');
    expect(garden.plantings[0]).toEqual({
      id: CARROTS,
      bedId: 'north-bed',
      cropId: 'carrot',
      start: { how: 'sow', day: '2027-05-20', happened: true },
      lastHarvest: { day: '2027-09-10', happened: false },
    });
    expect(garden.stands[0]?.sow).toEqual({ day: '2027-09-15', happened: false });
    expect(garden.piles[0]?.built).toEqual({ day: '2027-05-01', happened: true });
  });

  it('takes the day of reading itself as happened', () => {
    const garden = gardenOf(ledgerOf(['2027-05-20', imported(exampleFile())]));
    expect(garden.plantings[0]?.start.happened).toBe(true);
  });

  it('knows its days of work by number, each once and in order', () => {
    const file = exampleFile({ garden: { ...exampleData().garden, workDays: ['sun', 'wed', 'sun'] } });
    expect(gardenOf(ledgerOf(['2027-06-01', imported(file)])).place.workDays).toEqual([3, 7]);
  });

  it('takes what has a log as begun, and listed plans as plans, whatever the day', () => {
    const coverStands = [
      { bed: 'North bed', cover: 'oats', sow: '2027-03-15', planned: ['sow'] },
      { bed: 'South bed', cover: 'oats', sow: '2027-03-15', cut: '2027-05-30', planned: ['sow'] },
    ];
    const file = exampleFile({ coverStands });
    const garden = gardenOf(ledgerOf(['2027-06-01', imported(file)]));
    expect(garden.stands.map(({ sow }) => sow.happened)).toEqual([false, true]);
  });

  it.each([
    [{ dailyRecord: 'weather.csv' }, { kind: 'daily-record', file: 'weather.csv' }],
    [{ station: 'USW00014839' }, { kind: 'station', station: 'USW00014839' }],
    [{ nearest: true }, { kind: 'nearest' }],
  ])('plans by the climate it names: %j', (climate, choice) => {
    expect(gardenOf(ledgerOf(['2027-06-01', imported(exampleFile({ climate }))])).climate).toEqual(choice);
  });

  it('lays monthly normals out by kind, January first', () => {
    const monthlyNormals = Array.from({ length: 12 }, (_, month) => ({
      highC: month,
      lowC: -month,
      precipMm: 10 * month,
    }));
    const { climate } = gardenOf(ledgerOf(['2027-06-01', imported(exampleFile({ climate: { monthlyNormals } }))]));
    expect(climate).toMatchObject({ kind: 'monthly-normals' });
    expect(Reflect.get(climate, 'lowC')).toEqual([-0, -1, -2, -3, -4, -5, -6, -7, -8, -9, -10, -11]);
  });
});

describe('doing a task', () => {
  it('leaves its mark as the task stood', () => {
    expect(gardenAfter(['2027-09-16', sown('2027-09-14')]).done).toEqual([
      expect.objectContaining({ key: `cover-sow/stand:${STAND}`, on: '2027-09-14', kind: 'a-kind', entry: 2 }),
    ]);
  });

  it('sows a planned stand on the day it was done', () => {
    expect(gardenAfter(['2027-09-16', sown('2027-09-14')]).stands).toEqual([
      {
        id: STAND,
        bedId: 'north-bed',
        coverId: 'oats',
        sow: { day: '2027-09-14', happened: true },
        regrowthCheckedOn: [],
      },
    ]);
  });

  it('makes a suggested stand real, but not in a bed that is gone', () => {
    const suggested = (bedId: string) =>
      done('2027-08-01', 'x', { makes: 'stand-sown', standId: 's-new', bedId, coverId: 'buckwheat' });
    expect(gardenAfter(['2027-08-01', suggested('south-bed')]).stands.at(-1)).toMatchObject({
      id: 's-new',
      coverId: 'buckwheat',
    });
    expect(gardenAfter(['2027-08-01', suggested('west-bed')]).stands).toHaveLength(1);
  });

  it('carries a stand through its life', () => {
    const on = (day: string, makes: 'stand-cut' | 'regrowth-checked' | 'stand-dead') =>
      [day, done(day, makes, { makes, standId: STAND })] as const;
    const garden = gardenAfter(
      ['2027-09-16', sown('2027-09-14')],
      on('2028-05-10', 'stand-cut'),
      on('2028-05-22', 'regrowth-checked'),
      on('2028-06-01', 'regrowth-checked'),
      on('2028-06-10', 'stand-dead'),
    );
    expect(garden.stands[0]).toMatchObject({
      cutOn: '2028-05-10',
      regrowthCheckedOn: ['2028-05-22', '2028-06-01'],
      deadOn: '2028-06-10',
    });
  });

  it('keeps that a cut stand grew again, and what was done about it, in order', () => {
    const seen = (on: string): Fact => {
      return { kind: 'regrowth-seen', standId: STAND, bedId: 'north-bed', coverId: 'oats', on, answer: 'cut' };
    };
    const worked = (on: string, what: 'cut-again' | 'sheet-laid') =>
      [on, done(on, what, { makes: 'regrowth-worked', standId: STAND, what })] as const;
    const [stand] = gardenAfter(
      ['2027-09-16', sown('2027-09-14')],
      ['2028-05-10', done('2028-05-10', 'c', { makes: 'stand-cut', standId: STAND })],
      ['2028-06-02', seen('2028-06-02')],
      worked('2028-06-03', 'sheet-laid'),
      ['2028-06-04', seen('2028-05-20')],
      worked('2028-05-21', 'cut-again'),
    ).stands;
    expect(stand?.regrowth).toEqual([
      { on: '2028-05-20', what: 'grew-again', answer: 'cut' },
      { on: '2028-05-21', what: 'cut-again' },
      { on: '2028-06-02', what: 'grew-again', answer: 'cut' },
      { on: '2028-06-03', what: 'sheet-laid' },
    ]);
  });

  it('shows that what was worked on had begun, planned or not', () => {
    const cut = done('2027-09-10', 'x', { makes: 'stand-cut', standId: STAND });
    expect(gardenAfter(['2027-09-20', cut]).stands[0]?.sow).toEqual({ day: '2027-09-10', happened: true });
    const file = exampleFile({ piles: [{ ...exampleData().piles[0], built: '2027-07-01' }] });
    const looked: Fact = { kind: 'pile-read', pileId: 'left-bay-2027-07-01', on: '2027-07-09', smell: 'earthy' };
    const garden = gardenOf(ledgerOf(['2027-06-01', imported(file)], ['2027-07-09', looked]));
    expect(garden.piles[0]?.built).toEqual({ day: '2027-07-01', happened: true });
  });

  it('ends a crop on the day its bed was cleared', () => {
    const cleared = done('2027-09-04', 'x', { makes: 'bed-cleared', plantingId: CARROTS });
    expect(gardenAfter(['2027-09-04', cleared]).plantings[0]?.lastHarvest).toEqual({
      day: '2027-09-04',
      happened: true,
    });
  });

  it('keeps the last harvest that was told where its bed was cleared later', () => {
    const cleared = done('2027-12-20', 'x', { makes: 'bed-cleared', plantingId: CARROTS });
    expect(gardenAfter(['2027-12-20', cleared]).plantings[0]?.lastHarvest).toEqual({
      day: '2027-09-10',
      happened: true,
    });
  });

  it('carries a pile through its life, its log in order', () => {
    const pile = gardenAfter(
      ['2027-06-20', turned('2027-06-19')],
      ['2027-06-21', turned('2027-06-10')],
      ['2027-06-22', read('2027-06-12', 58)],
      ['2027-08-20', done('2027-08-20', 'c', { makes: 'pile-curing', pileId: PILE })],
      ['2027-09-20', done('2027-09-20', 'f', { makes: 'pile-finished', pileId: PILE })],
    ).piles[0];
    expect(pile).toMatchObject({
      turns: ['2027-06-10', '2027-06-19'],
      readings: [{ on: '2027-06-12', tempC: 58 }],
      curingSince: '2027-08-20',
      finishedOn: '2027-09-20',
    });
  });

  it('sets a curing pile working again that a thermometer finds at 43 °C or more (110 °F, compost:S27), until moved anew', () => {
    const cured = (day: string) => done(day, 'c', { makes: 'pile-curing', pileId: PILE });
    const curing: [string, Fact] = ['2027-08-20', cured('2027-08-20')];
    const found = (on: string, tempC: number) => gardenAfter(curing, ['2027-09-01', read(on, tempC)]).piles[0];
    expect(found('2027-08-28', 43)?.curingSince).toBeUndefined();
    expect(found('2027-08-28', 43)?.notReady).toEqual([{ on: '2027-08-28', failed: ['heats'] }]);
    // Cooler, or read before the move emptied it of its heat: it goes on curing.
    expect(found('2027-08-28', 42.9)?.curingSince).toBe('2027-08-20');
    expect(found('2027-08-20', 60)?.curingSince).toBe('2027-08-20');
    const anew = gardenAfter(curing, ['2027-08-28', read('2027-08-28', 50)], ['2027-10-02', cured('2027-10-02')]);
    expect(anew.piles[0]?.curingSince).toBe('2027-10-02');
  });

  it('builds a planned pile, and writes compost down', () => {
    const file = exampleFile({ piles: [{ ...exampleData().piles[0], built: '2027-07-01' }] });
    const garden = gardenOf(
      ledgerOf(
        ['2027-06-01', imported(file)],
        ['2027-07-03', done('2027-07-03', 'b', { makes: 'pile-built', pileId: 'left-bay-2027-07-01' })],
        ['2027-10-10', done('2027-10-10', 't', { makes: 'bed-topdressed', bedId: 'south-bed', litres: 39 })],
        ['2027-10-11', done('2027-10-11', 'u', { makes: 'bed-topdressed', bedId: 'gone', litres: 39 })],
        ['2027-10-12', done('2027-10-12', 'o', { makes: 'compost-bought', litres: 400 })],
      ),
    );
    expect(garden.piles[0]?.built).toEqual({ day: '2027-07-03', happened: true });
    expect(garden.topdressed).toEqual([{ bedId: 'south-bed', on: '2027-10-10', litres: 39 }]);
    expect(garden.compostBought).toEqual([{ on: '2027-10-12', litres: 400, ordered: true }]);
  });

  it('changes nothing that is not there', () => {
    const { done: _marks, ...rest } = gardenAfter(
      ['2027-06-02', done('2027-06-02', 'x', { makes: 'pile-turned', pileId: 'gone' })],
      ['2027-06-02', done('2027-06-02', 'y', { makes: 'stand-cut', standId: 'gone' })],
      ['2027-06-02', done('2027-06-02', 'z', { makes: 'bed-cleared', plantingId: 'gone' })],
    );
    const { done: _none, ...before } = gardenAfter();
    expect(rest).toEqual(before);
  });
});

describe('skipping and pinning', () => {
  it('is remembered by the task, the newest word winning', () => {
    const garden = gardenAfter(
      ['2027-06-02', { kind: 'day-pinned', key: 'a', title: 'A', day: '2027-06-12' }],
      ['2027-06-03', { kind: 'day-pinned', key: 'b', title: 'B', day: '2027-06-13' }],
      ['2027-06-04', { kind: 'day-pinned', key: 'a', title: 'A', day: '2027-06-14' }],
      ['2027-06-05', { kind: 'day-unpinned', key: 'b', title: 'B' }],
      ['2027-06-06', { kind: 'tasks-skipped', on: '2027-06-06', tasks: [{ key: 'c', title: 'C' }] }],
    );
    expect(garden.pins).toEqual({ a: '2027-06-14' });
    expect(garden.skipped).toEqual({ c: '2027-06-06' });
  });
});

describe('taking an entry back', () => {
  const both = [
    ['2027-06-20', turned('2027-06-20')],
    ['2027-06-27', turned('2027-06-27')],
  ] as const;

  it('takes back the newest', () => {
    expect(gardenAfter(...both, ['2027-06-28', undo(3)])).toEqual(gardenAfter(both[0]));
  });

  it('takes back an older one and leaves the later', () => {
    expect(gardenAfter(...both, ['2027-06-28', undo(2)]).piles[0]?.turns).toEqual(['2027-06-27']);
  });

  it('can itself be taken back, and that again', () => {
    const back = gardenAfter(...both, ['2027-06-28', undo(3)], ['2027-06-28', undo(4)]);
    expect(back).toEqual(gardenAfter(...both));
    const again = gardenAfter(...both, ['2027-06-28', undo(3)], ['2027-06-28', undo(4)], ['2027-06-28', undo(5)]);
    expect(again.piles[0]?.turns).toEqual(['2027-06-20']);
  });

  it('takes a file back too: the one before stands again', () => {
    const renamed = exampleFile({ garden: { ...exampleData().garden, id: 'hollow-lane', name: 'New Lane' } });
    expect(gardenAfter(['2027-07-01', imported(renamed)]).name).toBe('New Lane');
    expect(gardenAfter(['2027-07-01', imported(renamed)], ['2027-07-02', undo(2)])).toEqual(gardenAfter());
  });

  it('of the only file leaves no garden', () => {
    expect(projectGarden(ledgerOf(['2027-06-01', imported(exampleFile())], ['2027-06-02', undo(1)]))).toBeUndefined();
  });

  it('reaches no entry that was not there yet', () => {
    const ledger = ledgerOf(
      ['2027-06-01', imported(exampleFile())],
      ['2027-06-02', undo(3)],
      ['2027-06-20', turned('2027-06-20')],
    );
    expect(standingEntries(ledger).map(({ entry }) => entry)).toEqual([1, 3]);
  });
});

describe('a file brought in again', () => {
  const later = (change: Record<string, unknown> = {}) => exampleFile({ ...change });

  it('keeps what was reported, and the day the garden began', () => {
    const garden = gardenAfter(
      ['2027-06-20', turned('2027-06-20')],
      ['2027-07-01', imported(later({ bins: [{ name: 'Left bay', volumeL: 900 }] }))],
    );
    expect(garden.bins[0]?.volumeL).toBe(900);
    expect(garden.piles[0]?.turns).toEqual(['2027-06-20']);
    expect([garden.startedOn, garden.done.length]).toEqual(['2027-06-01', 1]);
  });

  it('counts once what both the file and the ledger tell', () => {
    const facts = [
      ['2027-06-20', turned('2027-06-20')],
      ['2027-06-21', read('2027-06-21', 55)],
      ['2027-06-22', done('2027-06-22', 't', { makes: 'bed-topdressed', bedId: 'south-bed', litres: 39 })],
      ['2027-06-23', done('2027-06-23', 'o', { makes: 'compost-bought', litres: 400 })],
      ['2027-06-24', done('2027-06-24', 'p', { makes: 'compost-bought', litres: 400 })],
    ] as const;
    const before = gardenAfter(...facts);
    const again = gardenAfter(...facts, ['2027-07-01', imported(gardenFileOf(before))]);
    expect(again).toEqual(before);
    expect(gardenAfter(...facts, ['2027-07-01', imported(gardenFileOf(before), 'file')])).toEqual(before);
  });

  it('counts a layer once that the file tells without its pile, and keeps the pile', () => {
    const layer = { bed: 'South bed', on: '2027-06-22', litres: 39 };
    const fact = done('2027-06-22', 't', {
      makes: 'bed-topdressed',
      bedId: 'south-bed',
      litres: 39,
      pileIds: [PILE],
    });
    const topdressed = [{ bedId: 'south-bed', on: '2027-06-22', litres: 39, pileIds: [PILE] }];
    expect(gardenAfter(['2027-06-22', fact]).topdressed).toEqual(topdressed);
    const again = gardenAfter(['2027-06-22', fact], ['2027-07-01', imported(later({ topdressed: [layer] }))]);
    expect(again.topdressed).toEqual(topdressed);
    const twice = gardenAfter(['2027-06-22', fact], ['2027-07-01', imported(later({ topdressed: [layer, layer] }))]);
    expect(twice.topdressed).toHaveLength(2);
  });

  it('writes no pile into a file that no longer has it', () => {
    const fact = done('2027-06-22', 't', {
      makes: 'bed-topdressed',
      bedId: 'south-bed',
      litres: 39,
      pileIds: [PILE],
    });
    const garden = gardenAfter(['2027-06-22', fact], ['2027-07-01', imported(later({ piles: [] }))]);
    expect(gardenFileOf(garden).topdressed).toEqual([{ bed: 'south-bed', on: '2027-06-22', litres: 39 }]);
  });

  it('counts twice what happened twice', () => {
    const bought = { on: '2027-06-23', litres: 400, ordered: true } as const;
    const file = exampleFile({ compostBought: [bought, bought] });
    const fact = done('2027-06-23', 'o', { makes: 'compost-bought', litres: 400 });
    const third = done('2027-06-24', 'p', { makes: 'compost-bought', litres: 400 });
    const ledger = ledgerOf(['2027-06-20', imported(file)], ['2027-06-24', fact], ['2027-06-24', third]);
    expect(gardenOf(ledger).compostBought).toEqual([bought, bought, { ...bought, on: '2027-06-24' }]);
  });

  it('holds what was ordered and then found good, also where the file told of the order', () => {
    const order = { on: '2027-06-23', litres: 400, ordered: true } as const;
    const tested = done('2027-07-20', 't', { makes: 'compost-tested', boughtOn: '2027-06-23' });
    const told = ledgerOf(['2027-06-24', imported(exampleFile({ compostBought: [order] }))], ['2027-07-20', tested]);
    const reported = gardenAfter(
      ['2027-06-23', done('2027-06-23', 'o', { makes: 'compost-bought', litres: 400 })],
      ['2027-07-20', tested],
    );
    expect(gardenOf(told).compostBought).toEqual([{ ...order, tested: '2027-07-20' }]);
    expect(reported.compostBought).toEqual([{ ...order, tested: '2027-07-20' }]);
  });

  it('leaves a plan a plan that nobody has reported done, though its day has passed', () => {
    const garden = gardenAfter(['2027-09-20', imported(later())]);
    expect(garden.stands[0]?.sow).toEqual({ day: '2027-09-15', happened: false });
    expect(garden.plantings[0]?.lastHarvest).toEqual({ day: '2027-09-10', happened: false });
  });

  it('takes a date it changes as happened when it has passed, or when the file says there are no plans', () => {
    const moved = checkGardenFile({
      ...exampleData(),
      coverStands: [{ id: STAND, bed: 'North bed', cover: 'oats', sow: '2027-09-12' }],
    });
    expect(gardenAfter(['2027-09-20', imported(moved)]).stands[0]?.sow).toEqual({ day: '2027-09-12', happened: true });
    const said = later({ coverStands: [{ bed: 'North bed', cover: 'oats', sow: '2027-09-15', planned: [] }] });
    expect(gardenAfter(['2027-09-20', imported(said)]).stands[0]?.sow).toEqual({ day: '2027-09-15', happened: true });
  });

  describe('with the file preferred', () => {
    it('sets aside what was reported against it, with its mark', () => {
      const garden = gardenAfter(['2027-06-20', turned('2027-06-20')], ['2027-07-01', imported(later(), 'file')]);
      expect([garden.piles[0]?.turns, garden.done]).toEqual([[], []]);
    });

    it('keeps what it says nothing against: marks without effect, skips, pins', () => {
      const garden = gardenAfter(
        ['2027-06-02', done('2027-06-02', 'looked')],
        ['2027-06-03', { kind: 'tasks-skipped', on: '2027-06-03', tasks: [{ key: 'c', title: 'C' }] }],
        ['2027-06-04', { kind: 'day-pinned', key: 'a', title: 'A', day: '2027-06-12' }],
        ['2027-07-01', imported(later(), 'file')],
      );
      expect(garden.done.map(({ key }) => key)).toEqual(['looked']);
      expect([garden.skipped, garden.pins]).toEqual([{ c: '2027-06-03' }, { a: '2027-06-12' }]);
    });

    it('keeps what is reported after it, and never brings back what it set aside', () => {
      const garden = gardenAfter(
        ['2027-06-20', turned('2027-06-20')],
        ['2027-07-01', imported(later(), 'file')],
        ['2027-07-04', turned('2027-07-04')],
        ['2027-07-05', imported(later())],
      );
      expect(garden.piles[0]?.turns).toEqual(['2027-07-04']);
    });

    it('gives it all back when the file is taken back', () => {
      const facts = [['2027-06-20', turned('2027-06-20')]] as const;
      expect(gardenAfter(...facts, ['2027-07-01', imported(later(), 'file')], ['2027-07-02', undo(3)])).toEqual(
        gardenAfter(...facts),
      );
    });
  });
});

describe('what is told of the season', () => {
  it('joins what the file holds, told twice or once', () => {
    const night = { evening: '2027-05-01', lowC: -1, how: 'measured' } as const;
    const garden = projectGarden(
      ledgerOf(
        [
          '2027-05-02',
          imported(exampleFile({ coldNights: [night], away: [{ from: '2027-07-01', to: '2027-07-08' }] })),
        ],
        ['2027-05-02', { kind: 'cold-night-told', ...night }],
        ['2027-05-03', { kind: 'cold-night-told', evening: '2027-05-03', lowC: 0, how: 'expected' }],
        ['2027-05-04', { kind: 'away-told', from: '2027-06-01', to: '2027-06-03' }],
      ),
    );
    expect(garden?.coldNights.map(({ evening }) => evening)).toEqual(['2027-05-01', '2027-05-03']);
    expect(garden?.away.map(({ from }) => from)).toEqual(['2027-06-01', '2027-07-01']);
  });

  it('keeps a disease found in a bed that is there, and no other', () => {
    const found = { kind: 'disease-found', cropId: 'cabbage', disease: 'clubroot', on: '2027-05-01' } as const;
    const garden = projectGarden(
      ledgerOf(
        ['2027-05-01', imported(exampleFile())],
        ['2027-05-01', { ...found, bedId: 'north-bed' }],
        ['2027-05-01', { ...found, bedId: 'nowhere' }],
      ),
    );
    expect(garden?.diseases.map(({ bedId }) => bedId)).toEqual(['north-bed']);
  });

  it('starts a planting on the day it went in, and takes soil as sampled and squeezed on the day', () => {
    const garden = projectGarden(
      ledgerOf(
        ['2027-04-01', imported(exampleFile())],
        [
          '2027-05-24',
          done(
            '2027-05-23',
            'k',
            { makes: 'planting-started', plantingId: 'north-bed-carrot-2027-05-20' },
            { makes: 'soil-sampled' },
            { makes: 'soil-squeezed', soilTexture: 'loam', answer: 'crumbles' },
          ),
        ],
      ),
    );
    expect(garden?.plantings[0]?.start).toEqual({ how: 'sow', day: '2027-05-23', happened: true, meant: '2027-05-20' });
    expect(garden?.soilTests).toEqual([{ on: '2027-05-23' }]);
    expect(garden?.soilSqueezes).toEqual([{ on: '2027-05-23', soilTexture: 'loam', answer: 'crumbles' }]);
  });
});
