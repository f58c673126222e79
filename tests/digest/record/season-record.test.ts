import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../../src/garden/export-garden-file.ts';
import type { DoneTask, Fact } from '../../../src/garden/facts.ts';
import { checkGardenFile } from '../../../src/garden/read-garden-file.ts';
import { exampleData, exampleFile, gardenOf, imported, ledgerOf } from '../../garden/example-garden.ts';
import { frostDates } from '../../practices/gardens.ts';
import { did, lines, NORTH, recordOf, spread } from './recorded.ts';

const PILE = 'left-bay-2027-05-01';
const OATS = 'north-bed-oats-2027-09-15';
const CARROTS = 'north-bed-carrot-2027-05-20';
const undo = (entry: number): Fact => ({ kind: 'entry-undone', entry });
const begun = ['2027-06-01', imported(exampleFile())] as const;
const told = (...facts: (readonly [string, Fact])[]) => ledgerOf(begun, ...facts);

describe('the lines of a record', () => {
  it('begin with what the garden file brought in as happened, and say that it was the file', () => {
    const record = recordOf(told());
    expect(lines(record)).toEqual(['2027-05-01 Left bay: pile-built', '2027-05-20 North bed: sown']);
    expect(record.rows.map(({ origin, by }) => [origin, by])).toEqual([
      ['garden-file', undefined],
      ['garden-file', undefined],
    ]);
    expect(record.rows[0]).toMatchObject({ litres: 400, itemId: PILE });
  });

  it('leave out what is only planned, however long its day is past', () => {
    expect(lines(recordOf(told(), '2028-06-01'))).not.toContain('2027-09-15 North bed: cover-sown');
  });

  it('tell work with its amount, the day planned, the time it is reckoned to take, who told it and when', () => {
    const days = { plannedFor: '2027-06-08', lastDay: '2027-06-30' };
    const record = recordOf(told(['2027-06-12', spread('2027-06-10', 38, days)]));
    expect(record.rows.at(-1)).toMatchObject({
      ...{ on: '2027-06-10', about: 'bed', aboutId: 'north-bed', doing: 'compost-spread', what: 'compost', litres: 38 },
      ...{ plannedFor: '2027-06-08', lastDay: '2027-06-30', minutes: 40, title: 'Spread compost' },
      ...{ by: 'household', toldOn: '2027-06-12', entry: 2, origin: 'told' },
    });
  });

  it('leave out what was taken back', () => {
    const ledger = told(['2027-06-10', spread('2027-06-10', 38)], ['2027-06-11', undo(2)]);
    expect(lines(recordOf(ledger))).not.toContain('2027-06-10 North bed: compost-spread');
    expect(
      lines(
        recordOf([
          ...ledger,
          ...told(['2027-06-12', undo(3)])
            .slice(1)
            .map((row) => ({ ...row, entry: 4 })),
        ]),
      ),
    ).toContain('2027-06-10 North bed: compost-spread');
  });

  it('tell once what was reported and then stands in a file brought in again', () => {
    const ledger = told(
      ['2027-06-10', spread('2027-06-10', 38)],
      ['2027-06-14', { kind: 'pile-read', pileId: PILE, on: '2027-06-14', tempC: 58 }],
    );
    const again = checkGardenFile(gardenFileOf(gardenOf(ledger)));
    for (const prefer of ['reported', 'file'] as const) {
      const twice = [...ledger, ...ledgerOf(begun, begun, begun, ['2027-07-01', imported(again, prefer)]).slice(-1)];
      const record = recordOf(twice);
      expect(lines(record)).toEqual(lines(recordOf(ledger)));
      expect(record.rows.filter(({ origin }) => origin === 'told')).toHaveLength(2);
    }
  });

  it('let the file have the word where it was preferred', () => {
    const ledger = told(['2027-06-10', spread('2027-06-10', 38)], ['2027-07-01', imported(exampleFile(), 'file')]);
    expect(gardenOf(ledger).topdressed).toEqual([]);
    expect(lines(recordOf(ledger))).toEqual(lines(recordOf(told())));
  });

  it('keep work on a bed that has gone from the file, under its name of then', () => {
    const { beds, plantings: _plantings, coverStands: _stands, ...rest } = exampleData();
    const less = checkGardenFile({ ...rest, beds: beds.slice(1) });
    const record = recordOf(told(['2027-06-10', spread('2027-06-10', 38)], ['2027-07-01', imported(less)]));
    expect(lines(record)).toContain('2027-06-10 North bed: compost-spread');
    expect(record.seasons[0]?.beds).toMatchObject([{ id: 'north-bed', gone: true, compostL: 38 }]);
  });

  it('tell a skip as long as the garden holds it', () => {
    const key = `cover-cut/stand:${OATS}`;
    const skip: Fact = { kind: 'tasks-skipped', on: '2027-06-02', tasks: [{ key, title: 'Cut the oats' }] };
    const ledger = told(['2027-06-02', skip]);
    expect(recordOf(ledger).rows.at(-1)).toMatchObject({
      aboutName: 'North bed',
      doing: 'skipped',
      title: 'Cut the oats',
    });
    const chosen: Fact = {
      kind: 'stand-planned',
      standId: OATS,
      bedId: 'north-bed',
      coverId: 'oats',
      sowOn: '2027-09-15',
    };
    expect(lines(recordOf([...ledger, ...ledgerOf(begun, begun, ['2027-06-03', chosen]).slice(-1)]))).not.toContain(
      '2027-06-02 North bed: skipped',
    );
  });

  it('tell a crop cleared late with the day of its last harvest', () => {
    const file = exampleFile({
      plantings: [{ bed: 'North bed', crop: 'carrot', sow: '2027-03-20', lastHarvest: '2027-05-28' }],
    });
    const clear = did('2027-06-09', [{ makes: 'bed-cleared', plantingId: 'north-bed-carrot-2027-03-20' }], {
      subject: { type: 'planting', id: 'x', name: 'carrot in North bed', bedId: 'north-bed', grows: 'carrot' },
    });
    const cleared = recordOf(ledgerOf(['2027-06-01', imported(file)], ['2027-06-09', clear])).rows.at(-1);
    expect(cleared).toMatchObject({
      on: '2027-06-09',
      doing: 'cleared',
      what: 'carrot',
      note: 'last harvest ⟦2027-05-28⟧',
    });
    expect(lines(recordOf(ledgerOf(['2027-06-01', imported(file)])))).toContain('2027-05-28 North bed: harvest-ended');
  });

  it('count the minutes of a task once, however much it made true', () => {
    const both = did('2027-06-10', [
      { makes: 'bed-topdressed', bedId: 'north-bed', litres: 10 },
      { makes: 'bed-topdressed', bedId: 'north-bed', litres: 12 },
    ]);
    const record = recordOf(told(['2027-06-10', both]));
    expect(record.rows.filter(({ doing }) => doing === 'compost-spread').map(({ minutes }) => minutes)).toEqual([
      40,
      undefined,
    ]);
    expect(record.seasons[0]?.work.minutes).toBe(40);
  });

  it('count what is spent once for a job on a day once, in its lines and in the sum', () => {
    const bed = (id: string, job = 'topdress', onceMinutes = 10): DoneTask[] => {
      const made = did('2027-06-10', [{ makes: 'bed-topdressed', bedId: id, litres: 10 }], {
        ...{ key: `topdress/bed:${id}/${job}`, job: { id: job, title: 'Spread compost' }, onceMinutes },
      });
      return made.kind === 'tasks-done' ? made.tasks : [];
    };
    const tasks = [...bed('north-bed'), ...bed('south-bed', 'topdress', 15), ...bed('south-bed', 'other-job')];
    const record = recordOf(told(['2027-06-10', { kind: 'tasks-done', on: '2027-06-10', tasks }]));
    // By hand: 40 and 40 less the shorter start of 10; another job has a start of its own.
    expect(record.rows.flatMap(({ minutes }) => minutes ?? [])).toEqual([30, 40, 40]);
    expect(record.seasons[0]?.work.minutes).toBe(110);
  });

  it('have sums and amounts without the noise of binary arithmetic', () => {
    const two = [0.1, 0.2].map((litres, at) => spread(`2027-06-1${at}`, litres));
    const meal = did('2027-06-20', [
      { makes: 'bed-fed', bedId: 'north-bed', fertiliserId: 'blood_meal', grams: 0.1 + 0.2 },
    ]);
    const record = recordOf(told(...[...two, meal].map((fact) => ['2027-06-20', fact] as const)));
    expect(record.seasons[0]?.beds[0]).toMatchObject({ compostL: 0.3, fedG: 0.3 });
    expect(record.rows.find(({ doing }) => doing === 'fed')?.grams).toBe(0.3);
  });

  it('tell what garlic is: planted, and tomatoes set out', () => {
    const plantings = [
      { bed: 'North bed', crop: 'garlic', sow: '2026-10-12' },
      { bed: 'South bed', crop: 'tomato', setOut: '2027-05-28' },
    ];
    const { rows } = recordOf(ledgerOf(['2027-06-01', imported(exampleFile({ plantings }))]));
    expect(rows.map(({ doing, what }) => `${what} ${doing}`)).toEqual([
      'garlic planted',
      'undefined pile-built',
      'tomato set-out',
    ]);
  });

  it('tell a pile that heats again in curing as read, and not ready for it', () => {
    const work = (on: string, makes: 'pile-curing' | 'pile-turned'): readonly [string, Fact] => [
      on,
      did(on, [{ makes, pileId: PILE }], { subject: { type: 'pile', id: PILE, name: 'Left bay', binId: 'left-bay' } }),
    ];
    const hot: Fact = { kind: 'pile-read', pileId: PILE, on: '2027-07-20', tempC: 55 };
    const record = recordOf(
      told(work('2027-06-20', 'pile-turned'), work('2027-07-10', 'pile-curing'), ['2027-07-20', hot]),
    );
    expect(lines(record).slice(-4)).toEqual([
      '2027-06-20 Left bay: pile-turned',
      '2027-07-10 Left bay: pile-curing',
      '2027-07-20 Left bay: pile-read',
      '2027-07-20 Left bay: pile-not-ready',
    ]);
    expect(record.rows.slice(-2).every(({ origin }) => origin === 'told')).toBe(true);
    expect(lines(recordOf(told(['2027-06-20', { ...hot, on: '2027-06-20' }]))).at(-1)).toBe(
      '2027-06-20 Left bay: pile-read',
    );
  });
});

describe('a season of the record', () => {
  it('runs over the New Year in the south, and work in January belongs to the season begun in July', () => {
    const south = {
      ...exampleData(),
      garden: { ...exampleData().garden, latitude: -41.3, timeZone: 'Pacific/Auckland' },
    };
    const ledger = ledgerOf(
      ['2027-06-01', imported(checkGardenFile(south))],
      ['2028-01-04', spread('2028-01-03', 20)],
      ['2028-07-02', spread('2028-07-01', 9)],
    );
    const climate = frostDates('10-20', '04-15', -41.3);
    const record = recordOf(ledger, '2028-08-01', {}, climate);
    expect(record.seasons.map(({ season, name, from, to }) => [season, name, from, to])).toEqual([
      [2028, '2028/29', '2028-07-01', '2029-06-30'],
      [2027, '2027/28', '2027-07-01', '2028-06-30'],
      [2026, '2026/27', '2026-07-01', '2027-06-30'],
    ]);
    const litres = record.seasons.map(({ beds }) => beds.find(({ id }) => id === 'north-bed')?.compostL ?? 0);
    expect(litres).toEqual([9, 20, 0]);
  });

  it('keeps 29 February and both sides of New Year where they belong', () => {
    const ledger = ledgerOf(
      ['2026-01-01', imported(exampleFile())],
      ...['2027-12-31', '2028-01-01', '2028-02-29'].map((on) => [on, spread(on, 5)] as const),
    );
    const seasons = recordOf(ledger, '2028-03-01').rows.filter(({ doing }) => doing === 'compost-spread');
    expect(seasons.map(({ on, season }) => [on, season])).toEqual([
      ['2027-12-31', 2027],
      ['2028-01-01', 2028],
      ['2028-02-29', 2028],
    ]);
  });

  it('lists a crop in every season it stood in, and not in those it did not', () => {
    const plantings = [{ bed: 'North bed', crop: 'garlic', sow: '2026-10-12', lastHarvest: '2027-07-15' }];
    const ledger = ledgerOf(
      ['2027-08-01', imported(exampleFile({ plantings }))],
      ['2028-02-01', spread('2028-02-01', 5)],
    );
    const grown = recordOf(ledger, '2028-03-01').seasons.map(({ season, beds }) => [
      season,
      beds.flatMap(({ crops }) => crops.map(({ what }) => what)),
    ]);
    expect(grown).toEqual([
      [2028, []],
      [2027, ['garlic']],
      [2026, ['garlic']],
    ]);
  });

  it('sums up a pile: heat, turns and where its compost went', () => {
    const read = (on: string, tempC: number): readonly [string, Fact] => [
      on,
      { kind: 'pile-read', pileId: PILE, on, tempC },
    ];
    const turned = did('2027-06-08', [{ makes: 'pile-turned', pileId: PILE }], {
      key: 't',
      subject: { type: 'pile', id: PILE, name: 'Left bay', binId: 'left-bay' },
    });
    const given: Fact = did('2027-10-01', [
      { makes: 'bed-topdressed', bedId: 'north-bed', litres: 60, pileIds: [PILE] },
    ]);
    const record = recordOf(
      told(
        read('2027-06-03', 41),
        read('2027-06-05', 62),
        read('2027-06-07', 57),
        ['2027-06-08', turned],
        ['2027-10-01', given],
      ),
    );
    expect(record.seasons[0]?.piles[0]).toMatchObject({
      temperatures: {
        readings: 3,
        first: { on: '2027-06-03', tempC: 41 },
        highest: { on: '2027-06-05', tempC: 62 },
        hotDays: 2,
      },
      turns: 1,
      went: [{ on: '2027-10-01', bedName: 'North bed', litres: 60 }],
    });
  });

  it('tells the freezes that were seen: the last of spring and the first of autumn', () => {
    const low = (day: string, tminC: number) => ({ day, kind: 'observed' as const, tminC });
    const days = [low('2027-04-20', -3), low('2027-04-29', -0.5), low('2027-05-15', 2), low('2027-10-09', -1)];
    const seen: Fact = { kind: 'cold-night-told', evening: '2027-10-02', lowC: -0.2, how: 'measured' };
    const expected: Fact = { kind: 'cold-night-told', evening: '2027-09-20', lowC: -4, how: 'expected' };
    const [season] = recordOf(
      told(['2027-10-10', { kind: 'weather-logged', days }], ['2027-10-10', seen], ['2027-10-10', expected]),
    ).seasons;
    expect(season?.freezes).toEqual({
      nights: 4,
      lastSpring: { on: '2027-04-29', tempC: -0.5 },
      firstAutumn: { on: '2027-10-03', tempC: -0.2 },
    });
    expect(season?.weather).toMatchObject({ days: 4, lowest: { on: '2027-04-20', tempC: -3 } });
  });

  it('tells no freeze where no low was seen', () => {
    expect(recordOf(told()).seasons[0]).not.toHaveProperty('freezes');
  });

  it('adds work up by practice, month and member', () => {
    const file = exampleFile({ household: { people: 2, members: [{ name: 'Ida' }] } });
    const ledger = ledgerOf(
      ['2027-06-01', imported(file)],
      ['2027-06-10', spread('2027-06-10', 5)],
      ['2027-07-10', spread('2027-07-10', 5, { practice: 'mulching' })],
    );
    const byIda = ledger.map((row, at) => (at === 2 ? { ...row, by: 'Ida' } : row));
    expect(recordOf(byIda).seasons[0]?.work).toEqual({
      minutes: 80,
      byPractice: [
        { of: 'topdressing', minutes: 40 },
        { of: 'mulching', minutes: 40 },
      ],
      byMonth: [
        { of: '2027-06', minutes: 40 },
        { of: '2027-07', minutes: 40 },
      ],
      byMember: [{ of: 'Ida', minutes: 40 }],
    });
  });

  it('counts work given to a member as theirs, where nobody else told it under their own name', () => {
    const members = [{ name: 'Ida' }, { name: 'Per' }];
    const file = exampleFile({ household: { people: 2, members } });
    const given = (key: string): Fact => ({
      kind: 'task-assigned',
      tasks: [{ key, title: 'Spread compost' }],
      to: 'Per',
    });
    const ledger = ledgerOf(
      ['2027-06-01', imported(file)],
      ['2027-06-02', given('a')],
      ['2027-06-02', given('b')],
      ['2027-06-10', spread('2027-06-10', 5, { key: 'a' })],
      ['2027-06-11', spread('2027-06-11', 5, { key: 'b', effortMinutes: 15 })],
    );
    const byIda = ledger.map((row) => (row.entry === 5 ? { ...row, by: 'Ida' } : row));
    expect(recordOf(byIda).seasons[0]?.work.byMember).toEqual([
      { of: 'Per', minutes: 40 },
      { of: 'Ida', minutes: 15 },
    ]);
  });

  it('tells what was answered with not yet', () => {
    const putOff: Fact = {
      kind: 'put-off',
      on: '2027-06-05',
      tasks: [{ key: `cover-sow/stand:${OATS}`, title: 'Sow oats' }],
    };
    expect(recordOf(told(['2027-06-05', putOff])).rows.at(-1)).toMatchObject({
      ...{ on: '2027-06-05', aboutId: 'north-bed', doing: 'put-off', title: 'Sow oats' },
    });
  });

  it('asked for one bed tells of that bed alone', () => {
    const record = recordOf(told(['2027-06-10', spread('2027-06-10', 38)]), '2027-12-31', {
      season: 2027,
      about: { type: 'bed', ids: [NORTH.id] },
    });
    expect(lines(record)).toEqual(['2027-05-20 North bed: sown', '2027-06-10 North bed: compost-spread']);
    expect(record.seasons.map(({ beds, piles, work }) => [beds.map(({ id }) => id), piles, work.minutes])).toEqual([
      [['north-bed'], [], 40],
    ]);
  });
});

it('carrots that nobody cleared stand in the season the plan has them in', () => {
  const crops = recordOf(told()).seasons[0]?.beds[0]?.crops;
  expect(crops).toEqual([{ itemId: CARROTS, what: 'carrot', how: 'sown', from: '2027-05-20' }]);
});
