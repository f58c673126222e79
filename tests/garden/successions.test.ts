import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import { importDifferences } from '../../src/garden/file-difference.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { gardenOfFile, projectGarden } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { writtenAt } from '../../src/garden/successions.ts';
import { exampleData } from './example-garden.ts';

const TODAY = '2027-04-20';
const BEDS = [{ id: 'north', name: 'North bed', lengthM: 2.5, widthM: 1.2 }];
const fortnightly = { everyDays: 14, times: 3 };
const lettuce = { id: 'lettuce', bed: 'North bed', crop: 'lettuce-leaf', sow: '2027-04-25', again: fortnightly };

function read(plantings: Record<string, unknown>[], existing?: GardenFile): GardenFile {
  return checkGardenFile({ ...exampleData(), beds: BEDS, plantings, coverStands: [], mulches: [] }, existing);
}

function refusals(...plantings: Record<string, unknown>[]): string[] {
  try {
    read(plantings);
  } catch (error) {
    if (error instanceof InputRefused)
      return error.problems.map(({ where, what, mend }) => `${where}: ${what} ${mend}`);
    throw error;
  }
  return [];
}

const days = ({ plantings }: GardenFile) => plantings.map(({ id, sow, setOut }) => `${id} ${sow ?? setOut}`);

describe('a planting that is sown again', () => {
  it('is as many plantings as it has sowings, the first under its own id', () => {
    expect(days(read([lettuce]))).toEqual([
      'lettuce 2027-04-25',
      'lettuce-2 2027-05-09',
      'lettuce-3 2027-05-23',
      'lettuce-4 2027-06-06',
    ]);
  });

  it('shares its bed equally among them, unless each has a share of its own', () => {
    expect(read([lettuce]).plantings.map(({ areaM2 }) => areaM2)).toEqual([0.75, 0.75, 0.75, 0.75]);
    expect(read([{ ...lettuce, areaM2: 0.4 }]).plantings.map(({ areaM2 }) => areaM2)).toEqual([0.4, 0.4, 0.4, 0.4]);
  });

  it('takes its last harvest along, over 29 February and over New Year', () => {
    const winter = { ...lettuce, sow: '2027-12-18', lastHarvest: '2028-02-15' };
    expect(read([winter]).plantings.map(({ sow, lastHarvest }) => `${sow} ${lastHarvest}`)).toEqual([
      '2027-12-18 2028-02-15',
      '2028-01-01 2028-02-29',
      '2028-01-15 2028-03-14',
      '2028-01-29 2028-03-28',
    ]);
  });

  it('may be set out again as plants', () => {
    const { sow: _sow, ...rest } = lettuce;
    expect(days(read([{ ...rest, setOut: '2027-05-01', again: { everyDays: 21, times: 1 } }]))).toEqual([
      'lettuce 2027-05-01',
      'lettuce-2 2027-05-22',
    ]);
  });

  it('leaves the places of what else was written as they are, and knows its own', () => {
    const file = read([lettuce, { id: 'peas', bed: 'North bed', crop: 'pea', sow: '2026-04-10' }]);
    expect(days(file)[1]).toBe('peas 2026-04-10');
    expect(file.plantings.map((_, at) => writtenAt(file, at).where)).toEqual([
      'plantings[0]',
      'plantings[1]',
      'plantings[0]',
      'plantings[0]',
      'plantings[0]',
    ]);
  });
});

describe('a succession in the garden', () => {
  const ledgerOf = (...facts: LedgerEntry['fact'][]): LedgerEntry[] =>
    facts.map((fact, at) => ({
      entry: at + 1,
      recordedAt: `${TODAY}T12:00:00.000Z`,
      recordedOn: TODAY,
      by: 'a test',
      fact,
    }));
  const brought = (file: GardenFile) => ({ kind: 'garden-imported' as const, file, prefer: 'reported' as const });
  const sownLate = {
    kind: 'tasks-done' as const,
    on: '2027-05-12',
    tasks: [
      {
        key: 'sow/planting:lettuce-2',
        practice: 'planting',
        taskKind: 'sow-crop',
        title: 'Sow leaf lettuce in North bed',
        job: { id: 'sow-outdoors', title: 'Sow outdoors' },
        subject: { type: 'planting' as const, id: 'lettuce-2', name: 'leaf lettuce', bedId: 'north' },
        effortMinutes: 20,
        makes: [{ makes: 'planting-started' as const, plantingId: 'lettuce-2' }],
      },
    ],
  };

  it('keeps what was sown when its first day and the days between are moved', () => {
    const moved = read([{ ...lettuce, sow: '2027-05-02', again: { everyDays: 10, times: 3 } }]);
    const garden = projectGarden(ledgerOf(brought(read([lettuce])), sownLate, brought(moved)));
    const starts = garden?.plantings.map(({ id, start }) => [id, start.day, start.happened]);
    expect(starts).toEqual([
      ['lettuce', '2027-05-02', false],
      ['lettuce-2', '2027-05-12', true],
      ['lettuce-3', '2027-05-22', false],
      ['lettuce-4', '2027-06-01', false],
    ]);
  });

  it('is the same when its file is brought in again, or exported and brought in', () => {
    const file = read([lettuce]);
    const ledger = ledgerOf(brought(file));
    expect(importDifferences(ledger, file, { prefer: 'reported', readOn: TODAY })).toEqual([]);
    const garden = gardenOfFile(file, TODAY, TODAY);
    const exported = gardenFileOf(garden);
    expect(exported.plantings.some(({ again }) => again !== undefined)).toBe(false);
    expect(gardenOfFile(checkGardenFile(exported), TODAY, TODAY)).toEqual(garden);
  });

  it('loses its last sowings when it is sown fewer times, and no others', () => {
    const ledger = ledgerOf(brought(read([lettuce])));
    const fewer = read([{ ...lettuce, again: { everyDays: 14, times: 2 }, areaM2: 0.75 }]);
    const changes = importDifferences(ledger, fewer, { prefer: 'reported', readOn: TODAY }) ?? [];
    expect(changes.map(({ path, file }) => `${path}: ${file}`)).toEqual(['plantings.lettuce-4: not there']);
  });
});

describe('a succession that cannot be', () => {
  it('wants an id, and is offered the one it would have had', () => {
    const { id: _id, ...nameless } = lettuce;
    expect(refusals(nameless)).toEqual([
      'plantings[0].id: is missing. Give a planting that is sown again an id, such as ' +
        'id: north-lettuce-leaf-2027-04-25. Its sowings are named after it, and stay themselves when the first day moves.',
    ]);
  });

  it('may not run into the id of another planting', () => {
    const other = { id: 'lettuce-3', bed: 'North bed', crop: 'pea', sow: '2026-04-10' };
    expect(refusals(lettuce, other)[0]).toContain('"lettuce-3" is there. Give one of the two another id.');
  });

  it('is no rotation: it ends within a year', () => {
    expect(refusals({ ...lettuce, again: { everyDays: 73, times: 5 } })).toEqual([]);
    expect(refusals({ ...lettuce, again: { everyDays: 74, times: 5 } })[0]).toContain(
      'plantings[0].again: the last sowing would be on 2028-04-29, more than a year after the first.',
    );
  });

  it('is not for a crop that stays', () => {
    const rhubarb = { id: 'rhubarb', bed: 'North bed', crop: 'rhubarb', setOut: '2027-04-20', again: fortnightly };
    expect(refusals(rhubarb)[0]).toContain('does not go with Rhubarb, which stays.');
  });

  it('is told in whole days and whole times, both of them', () => {
    expect(refusals({ ...lettuce, again: { everyDays: 7.5, times: 3 } })[0]).toContain('whole days');
    expect(refusals({ ...lettuce, again: { everyDays: 7, times: 0 } })[0]).toContain('from 1 to 26');
    expect(refusals({ ...lettuce, again: { everyDays: 7 } })[0]).toContain('plantings[0].again.times: is missing.');
    expect(refusals({ ...lettuce, again: { every: 7, times: 3 } })[0]).toContain('everyDays');
  });

  it('takes no more than its bed has', () => {
    expect(refusals({ ...lettuce, areaM2: 4 })[0]).toContain('areaM2: 4 m² is more than North bed has: 3 m².');
  });

  it('has room for each of its sowings', () => {
    const small = (times: number, parts: Record<string, unknown> = {}) => {
      const beds = [{ id: 'north', name: 'North bed', lengthM: 0.3, widthM: 0.3 }];
      const plantings = [{ ...lettuce, again: { everyDays: 7, times }, ...parts }];
      return checkGardenFile({ ...exampleData(), beds, plantings, coverStands: [], mulches: [] });
    };
    expect(small(8).plantings.map(({ areaM2 }) => areaM2)).toEqual(Array.from({ length: 9 }, () => 0.01));
    expect(() => small(26)).toThrow(
      'plantings[0].again: 27 sowings that share the bed have less than 0.01 m² each. Give fewer times, or the share of ' +
        'each as areaM2.',
    );
    expect(small(26, { areaM2: 0.09 }).plantings).toHaveLength(27);
  });
});
