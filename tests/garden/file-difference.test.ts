import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { fileDifferences, importDifferences } from '../../src/garden/file-difference.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { anyGardenData } from './any-garden.ts';
import { done, exampleData, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const CARROTS = 'north-bed-carrot-2027-05-20';
const OATS = 'north-bed-oats-2027-09-15';
const PILE = 'left-bay-2027-05-01';

/** Differences as lines: path, now, file. */
const lines = (from: GardenFile, to: GardenFile) =>
  fileDifferences(from, to).map(({ path, now, file }) => `${path}: ${now} -> ${file}`);
const changed = (change: Record<string, unknown>) => lines(exampleFile(), exampleFile(change));

describe('differences between two files', () => {
  it('are none between a file and itself', () => {
    fc.assert(
      fc.property(anyGardenData, (data) => {
        const file = checkGardenFile(data);
        expect(fileDifferences(file, structuredClone(file))).toEqual([]);
      }),
    );
  });

  it('turn round with the files', () => {
    fc.assert(
      fc.property(anyGardenData, anyGardenData, (a, b) => {
        const [from, to] = [checkGardenFile(a), checkGardenFile(b)];
        const there = fileDifferences(from, to).map(({ path, now, file }) => [path, now, file].join('|'));
        const back = fileDifferences(to, from).map(({ path, now, file }) => [path, file, now].join('|'));
        expect(back.sort()).toEqual(there.sort());
      }),
    );
  });

  it('name a changed value by its item', () => {
    const plantings = [{ id: CARROTS, bed: 'North bed', crop: 'carrot', sow: '2027-05-25', lastHarvest: '2027-09-10' }];
    expect(changed({ plantings })).toEqual([`plantings.${CARROTS}.sow: 2027-05-20 -> 2027-05-25`]);
  });

  it('name a value that comes or goes', () => {
    const plantings = [{ bed: 'North bed', crop: 'carrot', sow: '2027-05-20' }];
    expect(changed({ plantings })).toEqual([`plantings.${CARROTS}.lastHarvest: 2027-09-10 -> not given`]);
  });

  it('name an item that comes or goes, in one line', () => {
    expect(changed({ coverStands: [{ bed: 'South bed', mix: 'rye-vetch', sow: '2027-09-10' }] })).toEqual([
      `coverStands.${OATS}: bed north-bed, cover oats, sow 2027-09-15 -> not there`,
      'coverStands.south-bed-rye-vetch-2027-09-10: not there -> bed south-bed, mix rye-vetch, sow 2027-09-10',
    ]);
  });

  it('reach the garden, its climate and its habits', () => {
    const differences = changed({
      garden: { ...exampleData().garden, id: 'hollow-lane', workDays: ['wed', 'sat'], elevationM: 210 },
      climate: { frostDates: { lastSpring: '05-12', firstAutumn: '10-05' } },
      topdressing: { depthMm: 13, season: 'autumn' },
    });
    expect(differences).toEqual([
      'garden.workDays: sat, sun -> wed, sat',
      'garden.elevationM: not given -> 210',
      'climate.frostDates.lastSpring: 05-10 -> 05-12',
      'topdressing.depthMm: not given -> 13',
      'topdressing.season: not given -> autumn',
    ]);
  });

  it('tell another kind of climate', () => {
    expect(changed({ climate: { station: 'USW00014839' } })).toEqual([
      'climate.frostDates: lastSpring 05-10, firstAutumn 10-05 -> not given',
      'climate.station: not given -> USW00014839',
    ]);
  });

  it('tell logs line by line, whatever their order', () => {
    const pile = { bin: 'Left bay', built: '2027-05-01', method: 'hot' };
    const from = exampleFile({ piles: [{ ...pile, turns: ['2027-05-08', '2027-05-15'] }] });
    const to = exampleFile({
      piles: [{ ...pile, turns: ['2027-05-22', '2027-05-08'], readings: [{ on: '2027-05-20', tempC: 55 }] }],
      topdressed: [{ bed: 'South bed', on: '2026-10-20', litres: 39 }],
    });
    expect(lines(from, to)).toEqual([
      `piles.${PILE}.readings: not there -> on 2027-05-20, tempC 55`,
      `piles.${PILE}.turns: 2027-05-15 -> not there`,
      `piles.${PILE}.turns: not there -> 2027-05-22`,
      'topdressed: not there -> bed south-bed, on 2026-10-20, litres 39',
    ]);
  });
});

describe('what bringing a file in would change', () => {
  const turned: Fact = done('2027-06-20', 't', { makes: 'pile-turned', pileId: PILE });
  const cleared: Fact = done('2027-09-04', 'c', { makes: 'bed-cleared', plantingId: CARROTS });
  const ledger = ledgerOf(['2027-06-01', imported(exampleFile())], ['2027-06-20', turned], ['2027-09-04', cleared]);
  const terms = { prefer: 'reported', readOn: '2027-09-20' } as const;

  it('cannot be told without a garden', () => {
    expect(importDifferences([], exampleFile(), terms)).toBeUndefined();
  });

  it('is nothing for the garden written out and read again, on any day', () => {
    const file = gardenFileOf(gardenOf(ledger));
    expect(importDifferences(ledger, file, terms)).toEqual([]);
    expect(importDifferences(ledger, file, { ...terms, readOn: '2029-01-01' })).toEqual([]);
  });

  it('says where a reported fact stands against the file, and whose word is kept', () => {
    const against = [
      {
        path: `plantings.${CARROTS}.lastHarvest`,
        now: '2027-09-04',
        file: '2027-09-10',
      },
      { path: `piles.${PILE}.turns`, now: '2027-06-20', file: 'not there' },
    ];
    for (const prefer of ['reported', 'file'] as const) {
      const differences = importDifferences(ledger, exampleFile(), { ...terms, prefer });
      expect(differences).toEqual(against.map((difference) => ({ ...difference, keeps: prefer })));
    }
  });

  it('leaves out whose word is kept where nothing was reported', () => {
    const file = exampleFile({ bins: [{ name: 'Left bay', volumeL: 900 }] });
    const differences = importDifferences(ledger, file, terms) ?? [];
    expect(differences.find(({ path }) => path.startsWith('bins'))).toEqual({
      path: 'bins.left-bay.volumeL',
      now: '760',
      file: '900',
    });
  });

  it('tells a plan that the file says is kept', () => {
    const file = exampleFile({ coverStands: [{ bed: 'North bed', cover: 'oats', sow: '2027-09-15', planned: [] }] });
    expect(importDifferences(ledger, file, terms)).toContainEqual({
      path: `coverStands.${OATS}.planned`,
      now: 'sow',
      file: 'not given',
    });
  });

  it('is what then happens: with the file preferred the garden is as the file says', () => {
    fc.assert(
      fc.property(anyGardenData, anyGardenData, (first, second) => {
        const held = checkGardenFile(first);
        const next = checkGardenFile(second, held);
        const before = ledgerOf(['2027-06-01', imported(held)]);
        const after = gardenOf(ledgerOf(['2027-06-01', imported(held)], ['2027-09-20', imported(next, 'file')]));
        expect(importDifferences(before, next, { prefer: 'file', readOn: '2027-09-20' })).toEqual(
          fileDifferences(gardenFileOf(gardenOf(before)), gardenFileOf(after)),
        );
      }),
      { numRuns: 50 },
    );
  });
});
