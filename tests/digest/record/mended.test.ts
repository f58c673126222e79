import { describe, expect, it } from 'vitest';
import type { Edit } from '../../../src/garden/edit.ts';
import { gardenFileOf } from '../../../src/garden/export-garden-file.ts';
import type { Fact } from '../../../src/garden/facts.ts';
import type { LedgerEntry } from '../../../src/garden/ledger.ts';
import { exampleFile, gardenOf, imported, ledgerOf } from '../../garden/example-garden.ts';
import { mended, withFact } from '../../garden/mends.ts';
import { did, lines, recordOf, spread } from './recorded.ts';

const PILE = 'left-bay-2027-05-01';
const read: Fact = { kind: 'pile-read', pileId: PILE, on: '2027-06-14', tempC: 61 };
const turned = did('2027-06-15', [{ makes: 'pile-turned', pileId: PILE }], {
  subject: { type: 'pile', id: PILE, name: 'Left bay', binId: 'left-bay' },
});

const ledger = ledgerOf(
  ['2027-06-01', imported(exampleFile())],
  ['2027-06-10', spread('2027-06-10', 38)],
  ['2027-06-14', read],
  ['2027-06-15', turned],
);

const byIda = (entries: LedgerEntry[]): LedgerEntry[] =>
  entries.map((entry, at) => (at === entries.length - 1 ? { ...entry, by: 'ida' } : entry));

function pileChanged(change: object): Edit {
  const pile = gardenFileOf(gardenOf(ledger)).piles[0];
  return { list: 'piles', id: PILE, row: { ...pile, ...change } };
}

describe('the record of a garden in which something was changed', () => {
  it('tells a mended reading once, as it was mended, by whoever mended it', () => {
    const after = byIda(mended(ledger, '2027-06-20', pileChanged({ readings: [{ on: '2027-06-14', tempC: 51 }] })));
    const readings = recordOf(after).rows.filter(({ doing }) => doing === 'pile-read');
    expect(readings).toEqual([expect.objectContaining({ on: '2027-06-14', tempC: 51, by: 'ida', entry: 5 })]);
  });

  it('keeps the time work took when its day is put right', () => {
    const after = mended(ledger, '2027-06-20', pileChanged({ turns: ['2027-06-13'] }));
    const turns = recordOf(after).rows.filter(({ doing }) => doing === 'pile-turned');
    expect(turns).toEqual([expect.objectContaining({ on: '2027-06-13', minutes: 40 })]);
  });

  it('leaves out what was taken out as never done, and has it again when that is taken back', () => {
    const [was] = gardenFileOf(gardenOf(ledger)).topdressed;
    const gone = mended(ledger, '2027-06-20', { list: 'topdressed', was });
    expect(lines(recordOf(gone))).not.toContain('2027-06-10 North bed: compost-spread');
    expect(lines(recordOf(withFact(gone, '2027-06-21', { kind: 'entry-undone', entry: 5 })))).toEqual(
      lines(recordOf(ledger)),
    );
  });

  it('tells what was written down later, and who did', () => {
    const row = { bed: 'south-bed', crop: 'kale', setOut: '2027-05-25' };
    const after = byIda(mended(ledger, '2027-06-20', { list: 'plantings', row }));
    expect(recordOf(after).rows.find(({ what }) => what === 'kale')).toMatchObject({
      ...{ on: '2027-05-25', aboutName: 'South bed', doing: 'set-out', by: 'ida', origin: 'told' },
    });
  });

  it('keeps the work that was done in a bed that is no longer there', () => {
    const after = mended(ledger, '2027-06-20', { list: 'beds', id: 'north-bed' });
    expect(
      lines(recordOf(after)).some((line) => line.startsWith('2027-06-10') && line.endsWith('compost-spread')),
    ).toBe(true);
  });

  it('moves the day of a cut that was put right', () => {
    const cut = did('2027-06-16', [{ makes: 'stand-cut', standId: 'rye' }]);
    const stand = { id: 'rye', bed: 'South bed', cover: 'cereal_rye', sow: '2026-09-15' };
    const grown = ledgerOf(['2027-06-01', imported(exampleFile({ coverStands: [stand] }))], ['2027-06-16', cut]);
    const row = { ...gardenFileOf(gardenOf(grown)).coverStands[0], cut: '2027-06-12' };
    const after = mended(grown, '2027-06-20', { list: 'coverStands', id: 'rye', row });
    expect(recordOf(after).rows.filter(({ doing }) => doing === 'cover-cut')).toEqual([
      expect.objectContaining({ on: '2027-06-12', minutes: 40 }),
    ]);
  });

  it('is the same once the mended garden’s own file was brought in again', () => {
    const after = mended(ledger, '2027-06-20', pileChanged({ readings: [{ on: '2027-06-14', tempC: 51 }] }));
    const again = withFact(after, '2027-07-01', imported(gardenFileOf(gardenOf(after))));
    expect(lines(recordOf(again))).toEqual(lines(recordOf(after)));
  });
});
