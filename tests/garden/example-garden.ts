/**
 * A small garden for tests to bend, as plain data and as a ledger.
 */
import type { Effect } from '../../src/garden/effects.ts';
import type { Fact } from '../../src/garden/facts.ts';
import type { Garden } from '../../src/garden/garden.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { projectGarden } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import type { Day } from '../../src/measures/days.ts';

/** Two beds, a bin with a pile, one crop and one planned cover, as a gardener would write them. */
export function exampleData() {
  return {
    garden: { name: 'Hollow Lane', latitude: 43.2, longitude: -88.1, timeZone: 'America/Chicago' },
    climate: { frostDates: { lastSpring: '05-10', firstAutumn: '10-05' } },
    beds: [
      { name: 'North bed', lengthM: 2.4, widthM: 1.2 },
      { name: 'South bed', lengthM: 3, widthM: 1 },
    ],
    plantings: [{ bed: 'North bed', crop: 'carrot', sow: '2027-05-20', lastHarvest: '2027-09-10' }],
    coverStands: [{ bed: 'North bed', cover: 'oats', sow: '2027-09-15' }],
    bins: [{ name: 'Left bay', volumeL: 760 }],
    piles: [
      { bin: 'Left bay', built: '2027-05-01', method: 'hot', ingredients: [{ material: 'leaves_oak', litres: 400 }] },
    ],
  };
}

/** The example garden's file, read; `change` is laid over its top-level keys. */
export function exampleFile(change: Record<string, unknown> = {}): GardenFile {
  return checkGardenFile({ ...exampleData(), ...change });
}

/** A ledger of facts, one a day from a first day or on the days given, numbered from 1. */
export function ledgerOf(...facts: (readonly [Day, Fact])[]): LedgerEntry[] {
  return facts.map(([recordedOn, fact], index) => ({
    entry: index + 1,
    recordedAt: `${recordedOn}T18:00:00.000Z`,
    recordedOn,
    by: 'household',
    fact,
  }));
}

/** The fact of a file brought in. */
export function imported(file: GardenFile, prefer: 'reported' | 'file' = 'reported'): Fact {
  return { kind: 'garden-imported', file, prefer };
}

/** The fact of a task done with what it makes true. */
export function done(on: Day, key: string, ...makes: Effect[]): Fact {
  return {
    kind: 'tasks-done',
    on,
    tasks: [
      {
        key,
        practice: 'cover-cropping',
        taskKind: 'a-kind',
        title: 'A task',
        job: { id: 'a-job', title: 'A job' },
        subject: { type: 'garden', id: 'hollow-lane', name: 'Hollow Lane' },
        effortMinutes: 10,
        makes,
      },
    ],
  };
}

/** The garden a ledger adds up to, where there is one. */
export function gardenOf(ledger: readonly LedgerEntry[]): Garden {
  const garden = projectGarden(ledger);
  if (garden === undefined) throw new Error('The ledger holds no garden.');
  return garden;
}
