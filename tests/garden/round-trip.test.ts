/**
 * A garden's file, handed out and brought in again: the same garden, whatever keys it has.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { gardenFileOf, gardenFileText } from '../../src/garden/export-garden-file.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { gardenFileSchema } from '../../src/garden/garden-file.ts';
import { inOneForm } from '../../src/garden/one-form.ts';
import { checkGardenFile, readGardenFile } from '../../src/garden/read-garden-file.ts';
import { addDays } from '../../src/measures/days.ts';
import { runs } from '../runs.ts';
import { anyFullGarden } from './any-full-garden.ts';
import { gardenOf, imported, ledgerOf } from './example-garden.ts';

const READ_ON = '2027-01-15';
const brought = (data: unknown) => ledgerOf([READ_ON, imported(checkGardenFile(data))]);

/** What a garden means: all of it but when it began here and what the ledger marks. */
function meaning({ startedOn: _startedOn, household, ...rest }: Garden) {
  const { members = [], ...shared } = household ?? {};
  return inOneForm({ ...rest, ...shared, members });
}

describe('a garden’s file that is handed out', () => {
  it('means the same garden where it is brought in, that day or years later', () => {
    fc.assert(
      fc.property(anyFullGarden, fc.nat(900), (data, later) => {
        const garden = gardenOf(brought(data));
        const text = gardenFileText(gardenFileOf(garden));
        const again = gardenOf(ledgerOf([addDays(READ_ON, later), imported(readGardenFile(text))]));
        expect(meaning(again)).toBe(meaning(garden));
      }),
      { numRuns: runs(30, 500) },
    );
  });

  it('is the same file once more when that garden is handed out', () => {
    fc.assert(
      fc.property(anyFullGarden, (data) => {
        const file = gardenFileOf(gardenOf(brought(data)));
        const again = gardenFileOf(gardenOf(ledgerOf(['2027-03-01', imported(readGardenFile(gardenFileText(file)))])));
        expect(again).toEqual(file);
      }),
      { numRuns: runs(20, 400) },
    );
  });

  it('changes nothing in the garden it came from, whoever is to win', () => {
    fc.assert(
      fc.property(anyFullGarden, fc.constantFrom('reported', 'file'), (data, prefer) => {
        const ledger = brought(data);
        const file = readGardenFile(gardenFileText(gardenFileOf(gardenOf(ledger))));
        const [entry] = ledgerOf(['2027-03-01', imported(file, prefer)]).map((row) => ({ ...row, entry: 2 }));
        expect(meaning(gardenOf([...ledger, ...(entry ? [entry] : [])]))).toBe(meaning(gardenOf(ledger)));
      }),
      { numRuns: runs(20, 400) },
    );
  });
});

describe('the gardens these are tried with', () => {
  it('have every key of the garden file between them', () => {
    const seen = new Set<string>();
    for (const data of fc.sample(anyFullGarden, { numRuns: 300, seed: 1 }))
      for (const path of pathsIn(data)) seen.add(path);
    expect(pathsOf(gardenFileSchema).filter((path) => !seen.has(path))).toEqual([]);
  });
});

/** Every path of plain data, list places left out: "beds.lengthM". */
function pathsIn(data: unknown, at = ''): string[] {
  if (Array.isArray(data)) return data.flatMap((item) => pathsIn(item, at));
  if (typeof data !== 'object' || data === null) return data === undefined ? [] : [at];
  return Object.entries(data).flatMap(([key, value]) => pathsIn(value, at === '' ? key : `${at}.${key}`));
}

/** Every path a schema knows, written the same way. */
function pathsOf(schema: z.core.$ZodType, at = ''): string[] {
  const { def } = schema._zod as unknown as { def: SchemaDef };
  if (def.innerType !== undefined) return pathsOf(def.innerType, at);
  if (def.element !== undefined) return pathsOf(def.element, at);
  if (def.shape === undefined) return [at];
  return Object.entries(def.shape).flatMap(([key, value]) => pathsOf(value, at === '' ? key : `${at}.${key}`));
}

interface SchemaDef {
  innerType?: z.core.$ZodType;
  element?: z.core.$ZodType;
  shape?: Readonly<Record<string, z.core.$ZodType>>;
}
