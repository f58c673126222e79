import { describe, expect, it } from 'vitest';
import { editedFile } from '../../src/garden/edit.ts';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import { type Fact, factSchema } from '../../src/garden/facts.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { laidOver } from '../../src/garden/project.ts';
import { done, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';
import { mended, mendOf, withFact } from './mends.ts';

const CARROTS = 'north-bed-carrot-2027-05-20';
const OATS = 'north-bed-oats-2027-09-15';
const PILE = 'left-bay-2027-05-01';
const read = (on: string, tempC: number): Fact => ({ kind: 'pile-read', pileId: PILE, on, tempC });
const undo = (entry: number): Fact => ({ kind: 'entry-undone', entry });

/** The example garden, brought in on 1 June 2027 and looked at since. */
function lived(): LedgerEntry[] {
  return ledgerOf(
    ['2027-06-01', imported(exampleFile())],
    ['2027-06-08', read('2027-06-08', 61)],
    ['2027-06-09', done('2027-06-09', 'turn', { makes: 'pile-turned', pileId: PILE })],
  );
}

const fileOf = (ledger: readonly LedgerEntry[]) => gardenFileOf(gardenOf(ledger));
const rowOf = <Row extends { id?: string | undefined }>(rows: readonly Row[], id: string): Row => {
  const row = rows.find((each) => each.id === id);
  if (row === undefined) throw new Error(`There is no ${id}.`);
  return row;
};

describe('a bed that is changed', () => {
  const ledger = lived();
  const north = rowOf(fileOf(ledger).beds, 'north-bed');
  const longer = mended(ledger, '2027-06-10', { list: 'beds', id: 'north-bed', row: { ...north, lengthM: 3 } });

  it('is as it was told last, and the rest of the garden is the very same', () => {
    const [was, is] = [gardenOf(ledger), gardenOf(longer)];
    expect(is.beds[0]).toEqual({ ...was.beds[0], lengthM: 3 });
    expect({ ...is, beds: was.beds }).toEqual(was);
    expect(is.done).toEqual(was.done);
  });

  it('is kept as the one thing that changed', () => {
    expect(longer.at(-1)?.fact).toEqual({
      kind: 'garden-mended',
      edits: [
        {
          how: 'changed',
          list: 'beds',
          id: 'north-bed',
          goesBy: { name: 'North bed' },
          fields: [{ key: 'lengthM', was: 2.4, is: 3 }],
          logs: [],
        },
      ],
    });
    expect(factSchema.parse(JSON.parse(JSON.stringify(longer.at(-1)?.fact)))).toEqual(longer.at(-1)?.fact);
  });

  it('takes what is reported afterwards, and is as before when the change is taken back', () => {
    const later = withFact(longer, '2027-06-12', read('2027-06-12', 55));
    expect(gardenOf(later).piles[0]?.readings).toHaveLength(2);
    expect(gardenOf(withFact(later, '2027-06-13', undo(4))).beds).toEqual(gardenOf(ledger).beds);
  });

  it('keeps the later word where an older change of the same figure is taken back', () => {
    const twice = mended(longer, '2027-06-11', { list: 'beds', id: 'north-bed', row: { ...north, lengthM: 3.5 } });
    expect(gardenOf(withFact(twice, '2027-06-12', undo(4))).beds[0]?.lengthM).toBe(3.5);
    expect(gardenOf(withFact(twice, '2027-06-12', undo(5))).beds[0]?.lengthM).toBe(3);
  });

  it('stays gone where it was taken out and an older change is taken back', () => {
    const gone = mended(longer, '2027-06-11', { list: 'beds', id: 'north-bed' });
    expect(gardenOf(withFact(gone, '2027-06-12', undo(4))).beds.map(({ id }) => id)).toEqual(['south-bed']);
  });
});

describe('a date that is changed', () => {
  const ledger = lived();
  const carrots = rowOf(fileOf(ledger).plantings, CARROTS);

  it('has happened as it had, when another day of the past is told', () => {
    const row = { ...carrots, sow: '2027-05-18' };
    const [planting] = gardenOf(mended(ledger, '2027-06-10', { list: 'plantings', id: CARROTS, row })).plantings;
    expect(planting?.start).toEqual({ how: 'sow', day: '2027-05-18', happened: true });
    expect(planting?.lastHarvest).toEqual({ day: '2027-09-10', happened: false });
  });

  it('has happened once it is no longer told as a plan', () => {
    const row = { ...carrots, lastHarvest: '2027-06-09', planned: [] };
    const [planting] = gardenOf(mended(ledger, '2027-06-10', { list: 'plantings', id: CARROTS, row })).plantings;
    expect(planting?.lastHarvest).toEqual({ day: '2027-06-09', happened: true });
  });

  it('stays a plan on a day that has passed by now', () => {
    const oats = rowOf(fileOf(ledger).coverStands, OATS);
    const row = { ...oats, sow: '2027-06-05' };
    const [stand] = gardenOf(mended(ledger, '2027-06-10', { list: 'coverStands', id: OATS, row })).stands;
    expect(stand?.sow).toEqual({ day: '2027-06-05', happened: false });
  });

  it('changes nothing of a planting that is not there any more', () => {
    const sown: Fact = {
      kind: 'plantings-planned',
      plantings: [{ id: 'beans', bedId: 'south-bed', cropId: 'snap-bean', start: { how: 'sow', day: '2027-06-20' } }],
      dropped: [],
    };
    const planned = withFact(ledger, '2027-06-10', sown);
    const row = { ...rowOf(fileOf(planned).plantings, 'beans'), sow: '2027-06-25' };
    const moved = mended(planned, '2027-06-11', { list: 'plantings', id: 'beans', row });
    expect(gardenOf(moved).plantings.at(-1)?.start.day).toBe('2027-06-25');
    expect(gardenOf(withFact(moved, '2027-06-12', undo(4)))).toEqual(gardenOf(ledger));
  });
});

describe('the log of a pile', () => {
  const ledger = lived();
  const pile = rowOf(fileOf(ledger).piles, PILE);
  const cooler = mended(ledger, '2027-06-10', {
    list: 'piles',
    id: PILE,
    row: { ...pile, readings: [{ on: '2027-06-08', tempC: 51 }] },
  });

  it('is mended reading by reading', () => {
    expect(gardenOf(cooler).piles[0]?.readings).toEqual([{ on: '2027-06-08', tempC: 51 }]);
    expect(gardenOf(cooler).piles[0]?.turns).toEqual(['2027-06-09']);
  });

  it('is not given a reading back that was mended and then taken back as a fact', () => {
    expect(gardenOf(withFact(cooler, '2027-06-11', undo(2))).piles[0]?.readings).toEqual([]);
  });

  it('counts a second turn of one day, mended in between or not', () => {
    const turned = done('2027-06-09', 'turn-2', { makes: 'pile-turned', pileId: PILE });
    expect(gardenOf(withFact(cooler, '2027-06-11', turned)).piles[0]?.turns).toEqual(['2027-06-09', '2027-06-09']);
  });
});

describe('something taken out', () => {
  it('takes along what cannot be without it, and no more', () => {
    const file = exampleFile({
      topdressed: [{ bed: 'North bed', on: '2027-05-10', litres: 60, piles: [PILE] }],
      soilTests: [{ on: '2027-05-02', bed: 'North bed', ph: 6.5 }, { on: '2027-05-02' }],
      household: { members: [{ name: 'Ida', beds: ['North bed', 'South bed'] }] },
    });
    const ledger = ledgerOf(['2027-06-01', imported(file)]);
    const garden = gardenOf(mended(ledger, '2027-06-10', { list: 'beds', id: 'north-bed' }));
    expect(garden).toMatchObject({ plantings: [], stands: [], topdressed: [], soilTests: [{ on: '2027-05-02' }] });
    expect(garden.soilTests).toHaveLength(1);
    expect(garden.household?.members?.[0]?.beds).toEqual(['south-bed']);
    const unbinned = gardenOf(mended(ledger, '2027-06-10', { list: 'bins', id: 'left-bay' }));
    expect(unbinned.piles).toEqual([]);
    expect(unbinned.topdressed).toEqual([{ bedId: 'north-bed', on: '2027-05-10', litres: 60 }]);
  });

  it('leaves nothing in a bed that was added and taken back, whatever was put into it since', () => {
    const added = mended(lived(), '2027-06-10', { list: 'beds', row: { name: 'Wall bed', lengthM: 2, widthM: 1 } });
    const sown = mended(added, '2027-06-11', {
      list: 'plantings',
      row: { bed: 'wall-bed', crop: 'kale', setOut: '2027-07-01' },
    });
    expect(gardenOf(sown).plantings.at(-1)?.id).toBe('wall-bed-kale-2027-07-01');
    expect(gardenOf(withFact(sown, '2027-06-12', undo(4)))).toEqual(gardenOf(lived()));
  });

  it('is never the last bed', () => {
    const file = exampleFile({ beds: [{ name: 'North bed', lengthM: 2.4, widthM: 1.2 }] });
    const ledger = mended(ledgerOf(['2027-06-01', imported(file)]), '2027-06-02', {
      list: 'beds',
      row: { name: 'New bed', lengthM: 2, widthM: 1 },
    });
    const swapped = mended(ledger, '2027-06-03', { list: 'beds', id: 'north-bed' });
    expect(gardenOf(swapped).beds.map(({ id }) => id)).toEqual(['new-bed']);
    expect(gardenOf(withFact(swapped, '2027-06-04', undo(2))).beds.map(({ id }) => id)).toEqual(['north-bed']);
  });

  it('never has its id given to something new', () => {
    const gone = mended(lived(), '2027-06-10', { list: 'plantings', id: CARROTS });
    const row = { bed: 'north-bed', crop: 'carrot', sow: '2027-05-20' };
    expect(gardenOf(mended(gone, '2027-06-11', { list: 'plantings', row })).plantings[0]?.id).toBe(`${CARROTS}-2`);
  });
});

describe('rows without ids', () => {
  const gear = [{ what: 'light-fabric', areaM2: 12 } as const];
  const ledger = ledgerOf(['2027-06-01', imported(exampleFile({ gear, soilTests: [{ on: '2027-05-02' }] }))]);

  it('are added, changed and taken out by what they say', () => {
    const more = mended(ledger, '2027-06-02', { list: 'gear', row: { what: 'heavy-fabric', areaM2: 6 } });
    const changed = mended(more, '2027-06-03', {
      list: 'gear',
      was: gear[0],
      row: { what: 'light-fabric', areaM2: 10 },
    });
    expect(gardenOf(changed).gear.map(({ areaM2 }) => areaM2)).toEqual([10, 6]);
    const left = mended(changed, '2027-06-04', { list: 'gear', was: { areaM2: 6, what: 'heavy-fabric' } });
    expect(gardenOf(left).gear).toEqual([{ what: 'light-fabric', areaM2: 10 }]);
  });

  it('keep a later change of another figure when an older one is taken back', () => {
    const [was] = fileOf(ledger).soilTests;
    const ph = mended(ledger, '2027-06-02', { list: 'soilTests', was: was ?? {}, row: { on: '2027-05-02', ph: 6.2 } });
    const both = mended(ph, '2027-06-03', {
      list: 'soilTests',
      was: { on: '2027-05-02', ph: 6.2 },
      row: { on: '2027-05-02', ph: 6.2, phosphorusPpm: 18 },
    });
    expect(gardenOf(withFact(both, '2027-06-04', undo(2))).soilTests).toEqual([
      { on: '2027-05-02', phosphorusPpm: 18 },
    ]);
  });

  it('are not changed where somebody else has changed them meanwhile: that is said', () => {
    const edit = { list: 'gear', was: { what: 'light-fabric', areaM2: 9 }, row: gear[0] } as const;
    expect(() => editedFile(fileOf(ledger), [edit])).toThrow(InputRefused);
  });
});

describe('parts of the garden', () => {
  const ledger = lived();

  it('are changed figure by figure, the id apart', () => {
    const { garden } = fileOf(ledger);
    const row = { ...garden, id: 'another', hoursPerWeek: 6, workDays: ['mon'] };
    const after = gardenOf(mended(ledger, '2027-06-10', { part: 'garden', row }));
    expect(after.place).toMatchObject({ hoursPerWeek: 6, workDays: [1] });
    expect(after.id).toBe('hollow-lane');
  });

  it('are replaced whole where they are one choice, and taken out where the garden can be without', () => {
    const chosen = mended(ledger, '2027-06-10', { part: 'climate', row: { nearest: true } });
    expect(gardenOf(chosen).climate).toEqual({ kind: 'nearest' });
    const layer = mended(chosen, '2027-06-11', { part: 'topdressing', row: { depthMm: 20, season: 'autumn' } });
    expect(gardenOf(layer).topdressing).toEqual({ depthMm: 20, season: 'autumn' });
    expect(gardenOf(mended(layer, '2027-06-12', { part: 'topdressing' })).topdressing).toBeUndefined();
  });

  it('leave the members of the household alone', () => {
    const household = { people: 3, members: [{ id: 'ida', name: 'Ida' }] };
    const shared = ledgerOf(['2027-06-01', imported(exampleFile({ household }))]);
    const after = gardenOf(mended(shared, '2027-06-02', { part: 'household', row: { people: 5, members: [] } }));
    expect(after.household).toEqual({ people: 5, members: [{ id: 'ida', name: 'Ida' }] });
    const none = gardenOf(mended(shared, '2027-06-02', { part: 'household' }));
    expect(none.household).toEqual({ members: [{ id: 'ida', name: 'Ida' }] });
  });
});

describe('logged weather', () => {
  const day = '2027-06-03';
  const logged: Fact = {
    kind: 'weather-logged',
    days: [
      { day, kind: 'observed', tminC: 4, rainMm: 6 },
      { day: '2027-06-04', kind: 'observed', rainMm: 1 },
    ],
  };
  const ledger = withFact(lived(), '2027-06-05', logged);

  it('is given anew whole, or taken out', () => {
    const anew = mended(ledger, '2027-06-06', { days: [{ day, kind: 'observed', rainMm: 16 }] });
    expect(gardenOf(anew).weather[0]).toEqual({ day, kind: 'observed', rainMm: 16 });
    const gone = mended(anew, '2027-06-07', { daysGone: [{ day, kind: 'observed' }] });
    expect(gardenOf(gone).weather.map((row) => row.day)).toEqual(['2027-06-04']);
  });

  it('stays mended when a garden file is preferred: the file tells no weather', () => {
    const gone = mended(ledger, '2027-06-06', { daysGone: [{ day, kind: 'observed' }] });
    const brought = withFact(gone, '2027-06-07', imported(exampleFile(), 'file'));
    expect(gardenOf(brought).weather).toHaveLength(1);
  });
});

describe('a mended garden whose file is brought in again', () => {
  const ledger = lived();
  const old = fileOf(ledger);
  const north = rowOf(old.beds, 'north-bed');
  const mendedLedger = mended(
    ledger,
    '2027-06-10',
    { list: 'beds', id: 'north-bed', row: { ...north, lengthM: 3, widthM: 1 } },
    { list: 'gear', row: { what: 'light-fabric', areaM2: 12 } },
  );
  const bring = (file: ReturnType<typeof fileOf>, prefer: 'reported' | 'file' = 'reported') =>
    gardenOf(withFact(mendedLedger, '2027-06-20', imported(file, prefer)));

  it('is the same garden', () => {
    expect(bring(fileOf(mendedLedger))).toEqual(gardenOf(mendedLedger));
  });

  it('keeps the change where an older file still says what the change found', () => {
    expect(bring(old)).toEqual(gardenOf(mendedLedger));
  });

  it('takes the file’s word where the file says otherwise by now', () => {
    const file = { ...old, beds: old.beds.map((bed) => (bed.id === 'north-bed' ? { ...bed, lengthM: 4 } : bed)) };
    expect(bring(file).beds[0]).toMatchObject({ lengthM: 4, widthM: 1 });
  });

  it('drops every change where the file is preferred', () => {
    const garden = bring(old, 'file');
    expect(garden.beds).toEqual(gardenOf(ledger).beds);
    expect(garden.gear).toEqual([]);
  });

  it('keeps something taken out where the file still has it as it was, and gives it back where the file changed it', () => {
    const gone = mended(mendedLedger, '2027-06-11', { list: 'plantings', id: CARROTS });
    const bringing = (file: ReturnType<typeof fileOf>) => gardenOf(withFact(gone, '2027-06-20', imported(file)));
    expect(bringing(old).plantings).toEqual([]);
    const later = old.plantings.map((row) => ({ ...row, lastHarvest: '2027-10-01' }));
    expect(bringing({ ...old, plantings: later }).plantings).toHaveLength(1);
  });

  it('does not tell a mended reading as it was reported once more', () => {
    const pile = rowOf(fileOf(ledger).piles, PILE);
    const row = { ...pile, readings: [{ on: '2027-06-08', tempC: 51 }] };
    const cooler = mended(ledger, '2027-06-10', { list: 'piles', id: PILE, row });
    const again = withFact(cooler, '2027-06-20', imported(fileOf(cooler)));
    expect(gardenOf(again).piles[0]?.readings).toEqual([{ on: '2027-06-08', tempC: 51 }]);
    expect(gardenOf(withFact(cooler, '2027-06-20', imported(old))).piles[0]?.readings).toEqual(row.readings);
  });

  it('counts a log row once that both the file and the change tell', () => {
    const pile = rowOf(fileOf(mendedLedger).piles, PILE);
    const turned = mended(mendedLedger, '2027-06-11', {
      list: 'piles',
      id: PILE,
      row: { ...pile, turns: [...pile.turns, '2027-06-10'] },
    });
    const again = withFact(turned, '2027-06-20', imported(fileOf(turned)));
    expect(gardenOf(again).piles[0]?.turns).toEqual(['2027-06-09', '2027-06-10']);
  });

  it('is laid over what the newest file tells, in the order it was told', () => {
    const laid = laidOver(withFact(mendedLedger, '2027-06-20', imported(old)));
    expect(laid?.told.beds[0]?.lengthM).toBe(2.4);
    expect(laid?.facts.map(({ fact }) => fact.kind)).toEqual(['pile-read', 'tasks-done', 'garden-mended']);
  });
});

describe('edits that change nothing', () => {
  it('make no fact', () => {
    const ledger = lived();
    const row = rowOf(fileOf(ledger).piles, PILE);
    expect(mendOf(ledger, [{ list: 'piles', id: PILE, row }])).toEqual({ kind: 'garden-mended', edits: [] });
  });
});
