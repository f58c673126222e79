import { describe, expect, it } from 'vitest';
import { recordCsv } from '../../../src/digest/record/csv.ts';
import { rowInWords } from '../../../src/digest/record/row-words.ts';
import { gardenFileOf } from '../../../src/garden/export-garden-file.ts';
import type { Fact } from '../../../src/garden/facts.ts';
import { checkGardenFile } from '../../../src/garden/read-garden-file.ts';
import { exampleFile, gardenOf, imported, ledgerOf } from '../../garden/example-garden.ts';
import { did, lines, NORTH, recordOf } from './recorded.ts';

const STAND = 'north-bed-oats-2027-09-15';
const subject = { ...NORTH, type: 'stand', id: STAND, name: 'Oats in North bed', bedId: 'north-bed' } as const;
const sown: Fact = did(
  '2027-09-12',
  [
    { makes: 'stand-sown', standId: STAND, bedId: 'north-bed', coverId: 'oats' },
    { makes: 'seed-sown', standId: STAND, coverId: 'oats', grams: 320 },
  ],
  { subject, taskKind: 'sow-cover', key: 'sow' },
);
const ordered: Fact = did('2027-08-10', [{ makes: 'seed-bought', coverId: 'oats', grams: 500 }], {
  ...{ subject, taskKind: 'order-cover-seed', key: 'order' },
});
const begun = ['2027-06-01', imported(exampleFile())] as const;
const ledger = ledgerOf(begun, ['2027-08-10', ordered], ['2027-09-12', sown]);
const ofSeed = (record: ReturnType<typeof recordOf>) => record.rows.filter(({ grams }) => grams !== undefined);

describe('cover seed in the record', () => {
  it('has a line when it was ordered and one beside its sowing, each with its grams', () => {
    const record = recordOf(ledger);
    expect(lines(record).slice(-3)).toEqual([
      '2027-08-10 North bed: seed-ordered',
      '2027-09-12 North bed: cover-sown',
      '2027-09-12 North bed: seed-sown',
    ]);
    expect(ofSeed(record).map(({ what, grams, origin }) => [what, grams, origin])).toEqual([
      ['oats', 500, 'told'],
      ['oats', 320, 'told'],
    ]);
  });

  it('is in the CSV in its column of grams', () => {
    const [header = '', ...rows] = recordCsv(recordOf(ledger).rows).split('\r\n');
    const at = header.split(',').indexOf('grams');
    const row = rows.find((line) => line.includes(',seed-sown,'));
    expect(row?.split(',')[at]).toBe('320');
  });

  it('reads in words, in grams or in ounces', () => {
    const words = (units: 'metric' | 'us') => ofSeed(recordOf(ledger)).map((row) => rowInWords(row, units, (id) => id));
    expect(words('metric')).toEqual(['Oats seed ordered, 500 g', 'Oats seed sown, 320 g']);
    // 320 g are 11.29 oz of 28.349523125 g.
    expect(words('us')[1]).toMatch(/^Oats seed sown, 11(\.3)? oz$/);
  });

  it('counts the time of its task once', () => {
    expect(recordOf(ledger).rows.filter(({ minutes }) => minutes !== undefined)).toHaveLength(2);
  });

  it('brought in again from a file stays one line, the report’s', () => {
    const file = checkGardenFile(gardenFileOf(gardenOf(ledger)));
    const again = ledgerOf(...ledger.map(({ recordedOn, fact }) => [recordedOn, fact] as const), [
      '2027-10-01',
      imported(file),
    ]);
    expect(ofSeed(recordOf(again))).toHaveLength(2);
    const alone = ofSeed(recordOf(ledgerOf(['2027-10-01', imported(file)])));
    expect(alone.map(({ doing, grams, origin }) => [doing, grams, origin])).toEqual([
      ['seed-sown', 320, 'garden-file'],
    ]);
  });

  it('taken back is told no more', () => {
    const undone = ledgerOf(begun, ['2027-09-12', sown], ['2027-09-13', { kind: 'entry-undone', entry: 2 }]);
    expect(ofSeed(recordOf(undone))).toEqual([]);
  });
});
