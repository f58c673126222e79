import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gardenFileOf, gardenFileText } from '../../src/garden/export-garden-file.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { checkGardenFile, readGardenFile } from '../../src/garden/read-garden-file.ts';
import { addDays } from '../../src/measures/days.ts';
import { anyGardenData } from './any-garden.ts';
import { done, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

/** What a garden file can tell of a garden: all but the ledger's marks and the day it began. */
function toldPart({
  startedOn: _startedOn,
  done: _done,
  skipped: _skipped,
  pins: _pins,
  putOff: _putOff,
  ...told
}: Garden) {
  return told;
}

const read = (garden: Garden) => readGardenFile(gardenFileText(gardenFileOf(garden)));

describe('a garden written as its file', () => {
  it('reads back as the same garden, that day and any day after', () => {
    fc.assert(
      fc.property(anyGardenData, fc.nat(900), fc.nat(900), (data, first, later) => {
        const readOn = addDays('2026-01-01', first);
        const garden = gardenOf(ledgerOf([readOn, imported(checkGardenFile(data))]));
        const again = gardenOf(ledgerOf([addDays(readOn, later), imported(read(garden))]));
        expect(toldPart(again)).toEqual(toldPart(garden));
      }),
    );
  });

  it('keeps every id, whoever made it', () => {
    fc.assert(
      fc.property(anyGardenData, (data) => {
        const file = checkGardenFile(data);
        const again = read(gardenOf(ledgerOf(['2027-06-01', imported(file)])));
        for (const list of ['beds', 'plantings', 'coverStands', 'bins', 'piles'] as const)
          expect(again[list].map(({ id }) => id)).toEqual(file[list].map(({ id }) => id));
      }),
    );
  });

  it('holds what was reported, and plans that nobody has kept yet', () => {
    const stand = 'north-bed-oats-2027-09-15';
    const garden = gardenOf(
      ledgerOf(
        ['2027-06-01', imported(exampleFile())],
        ['2027-06-08', done('2027-06-08', 't', { makes: 'pile-turned', pileId: 'left-bay-2027-05-01' })],
        [
          '2027-08-01',
          done('2027-08-01', 's', { makes: 'stand-sown', standId: 's-1', bedId: 'south-bed', coverId: 'rye-vetch' }),
        ],
      ),
    );
    const file = gardenFileOf(garden);
    expect(file.piles[0]?.turns).toEqual(['2027-06-08']);
    expect(file.coverStands).toEqual([
      {
        id: stand,
        bed: 'north-bed',
        cover: 'oats',
        sow: '2027-09-15',
        seen: [],
        looked: [],
        resown: [],
        seed: [],
        regrowthChecked: [],
        regrowth: [],
        planned: ['sow'],
      },
      {
        id: 's-1',
        bed: 'south-bed',
        mix: 'rye-vetch',
        sow: '2027-08-01',
        seen: [],
        looked: [],
        resown: [],
        seed: [],
        regrowthChecked: [],
        regrowth: [],
      },
    ]);
    expect(file.plantings[0]?.planned).toEqual(['lastHarvest']);
  });

  it('can be read when a fact came before the day it was planned for', () => {
    const facts = [
      done('2027-05-10', 'a', { makes: 'bed-cleared', plantingId: 'north-bed-carrot-2027-05-20' }),
      done('2027-05-11', 'b', { makes: 'stand-cut', standId: 'north-bed-oats-2027-09-15' }),
      done('2027-04-12', 'c', { makes: 'pile-turned', pileId: 'left-bay-2027-05-01' }),
    ];
    const garden = gardenOf(
      ledgerOf(['2027-04-01', imported(exampleFile())], ...facts.map((fact) => ['2027-05-12', fact] as const)),
    );
    expect(read(garden)).toEqual(gardenFileOf(garden));
  });
});

describe('the text of a garden file', () => {
  const text = gardenFileText(
    exampleFile({
      away: [{ from: '2027-07-10', to: '2027-07-17' }],
      piles: [
        {
          bin: 'Left bay',
          built: '2027-05-01',
          method: 'hot',
          turns: ['2027-05-08'],
          readings: [{ on: '2027-05-06', tempC: 61 }],
          ingredients: [{ material: 'leaves_oak', litres: 400 }],
        },
      ],
    }),
  );

  it('says first what it is and how to bring it back', () => {
    expect(text.split('\n')[0]).toBe(
      '# The garden as it stands, written by Loamtide. Change it and bring it back with:',
    );
  });

  it('puts each small item on a line and its dates in quotes', () => {
    expect(text).toContain(
      '- { bed: north-bed, crop: carrot, sow: "2027-05-20", lastHarvest: "2027-09-10", id: north-bed-carrot-2027-05-20 }',
    );
    expect(text).toContain('turns: [ "2027-05-08" ]');
    expect(text).toContain('lastSpring: "05-10"');
  });

  it('leaves out lists with nothing in them', () => {
    expect(text).not.toMatch(/\[\s*\]|compostBought|regrowthChecked/);
  });

  it('breaks no item over lines, however long its name', () => {
    const beds = [
      { name: `North bed, ${'long '.repeat(30)}`, lengthM: 2, widthM: 1, depthM: 0.3, soilTexture: 'loam' },
    ];
    const lines = gardenFileText(exampleFile({ beds, plantings: [], coverStands: [] })).split('\n');
    expect(lines.filter((line) => line.includes('lengthM'))).toEqual([
      expect.stringMatching(/name: .*lengthM.*soilTexture/),
    ]);
  });
});
