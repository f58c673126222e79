import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { Fact } from '../../src/garden/facts.ts';
import { gardenFileSchema } from '../../src/garden/garden-file.ts';
import { openStore } from '../../src/store/store.ts';
import { entryOf, NOON, skipping } from './entries.ts';
import { stockedStore } from './stocked.ts';
import { tempFolder } from './temp-folder.ts';

const importing: Fact = {
  kind: 'garden-imported',
  prefer: 'reported',
  file: gardenFileSchema.parse({
    garden: { id: 'plot', name: 'Hollow Lane', latitude: -43.5, longitude: 172.6, timeZone: 'Pacific/Auckland' },
    climate: { frostDates: { lastSpring: '10-10', firstAutumn: '04-28' } },
    beds: [{ id: 'north', name: 'North bed — “the wet one”', lengthM: 2.4, widthM: 1.2 }],
    plantings: [{ id: 'p-1', bed: 'north', crop: 'garlic', setOut: '2024-02-29' }],
  }),
};

const reading: Fact = { kind: 'pile-read', pileId: 'p-1', on: '2027-04-18', tempC: 54.5, smell: 'earthy' };

describe('adding to the ledger', () => {
  test('entries come back as they were written, numbered from one', async () => {
    const store = await stockedStore();
    await store.append('plot', 0, [entryOf(importing), entryOf(reading)]);
    expect(await store.ledger('plot')).toEqual([
      { entry: 1, recordedAt: NOON, recordedOn: '2027-04-18', by: 'ada', fact: importing },
      { entry: 2, recordedAt: NOON, recordedOn: '2027-04-18', by: 'ada', fact: reading },
    ]);
  });

  test('each accepted change raises the facts version by one, however many entries it has', async () => {
    const store = await stockedStore();
    expect(await store.factsVersion('plot')).toBe(0);
    expect(await store.append('plot', 0, [skipping('a'), skipping('b')])).toEqual({ outcome: 'added', version: 1 });
    expect(await store.append('plot', 1, [skipping('c')])).toEqual({ outcome: 'added', version: 2 });
    expect((await store.ledger('plot')).map(({ entry }) => entry)).toEqual([1, 2, 3]);
  });

  test('nothing to add changes nothing', async () => {
    const store = await stockedStore();
    expect(await store.append('plot', 0, [])).toEqual({ outcome: 'added', version: 0 });
    expect(await store.factsVersion('plot')).toBe(0);
  });

  test('a caller who read an older version is told so and adds nothing', async () => {
    const store = await stockedStore();
    await store.append('plot', 0, [skipping('a')]);
    expect(await store.append('plot', 0, [skipping('b'), skipping('c')])).toEqual({ outcome: 'stale' });
    expect(await store.ledger('plot')).toHaveLength(1);
    expect(await store.factsVersion('plot')).toBe(1);
  });

  test('of two callers at once, exactly one wins', async () => {
    const store = await stockedStore();
    const answers = await Promise.all([
      store.append('plot', 0, [skipping('a')]),
      store.append('plot', 0, [skipping('b')]),
    ]);
    expect(answers.map(({ outcome }) => outcome)).toEqual(['added', 'stale']);
    expect(await store.ledger('plot')).toHaveLength(1);
  });

  test('weather moves the facts on too', async () => {
    const store = await stockedStore();
    const record = { origin: 'invented', leftOut: [], days: [{ day: '2027-04-18', tminC: -1.1 }] };
    const version = await store.replaceWeatherRecord('plot', record);
    expect(version).toBe(1);
    expect(await store.append('plot', 0, [skipping('a')])).toEqual({ outcome: 'stale' });
    expect(await store.append('plot', version, [skipping('a')])).toEqual({ outcome: 'added', version: 2 });
    expect((await store.ledger('plot')).map(({ entry }) => entry)).toEqual([1]);
  });

  test('an unknown garden is refused by name', async () => {
    const store = await stockedStore();
    await expect(store.append('plto', 0, [skipping('a')])).rejects.toThrow(/"plto" is not known/);
    await expect(store.factsVersion('plto')).rejects.toThrow(/"plto" is not known/);
    expect(await store.ledger('plto')).toEqual([]);
  });
});

describe('several writes together', () => {
  test('all stand when the work ends well', async () => {
    const store = await stockedStore();
    await store.transaction(async (shelves) => {
      await shelves.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
      await shelves.append('yard', 0, [skipping('a')]);
      const version = await shelves.replaceWeatherRecord('yard', { origin: 'A station.', leftOut: [], days: [] });
      expect(version).toBe(2);
    });
    expect(await store.gardenIds()).toEqual(['plot', 'yard']);
    expect(await store.ledger('yard')).toHaveLength(1);
  });

  test('none stands when the work throws', async () => {
    const store = await stockedStore();
    const work = store.transaction(async (shelves) => {
      await shelves.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
      await shelves.append('plot', 0, [skipping('a')]);
      throw new Error('the feed could not be made');
    });
    await expect(work).rejects.toThrow('the feed could not be made');
    expect(await store.gardenIds()).toEqual(['plot']);
    expect(await store.ledger('plot')).toEqual([]);
    expect(await store.factsVersion('plot')).toBe(0);
  });
});

describe('reading the ledger', () => {
  test('survives closing and opening again', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const store = await openStore({ file });
    await store.createGarden({ id: 'plot', name: 'Hollow Lane', createdAt: NOON });
    await store.append('plot', 0, [entryOf(importing)]);
    await store.close();
    const again = await openStore({ file });
    onTestFinished(() => again.close());
    expect((await again.ledger('plot')).map(({ fact }) => fact)).toEqual([importing]);
  });

  test.each([
    ['text that is not JSON', '{"kind":'],
    ['a kind of fact this program does not know', '{"kind":"rain-danced"}'],
    [
      'a day that is not in the calendar',
      '{"kind":"tasks-skipped","tasks":[{"key":"a","title":"b"}],"on":"2027-02-29"}',
    ],
  ])('refuses %s and names the entry', async (_, fact) => {
    const file = join(tempFolder(), 'loamtide.db');
    const store = await stockedStore(file);
    await store.append('plot', 0, [skipping('a')]);
    const sqlite = new SqliteFile(file);
    sqlite.prepare('update ledger set fact = ?').run(fact);
    sqlite.close();
    await expect(store.ledger('plot')).rejects.toThrow(/ledger of plot, entry 1.*copy made before/s);
  });

  test('gardens do not see each other', async () => {
    const store = await stockedStore();
    await store.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
    await store.append('plot', 0, [skipping('a')]);
    await store.append('yard', 0, [skipping('b'), skipping('c')]);
    expect((await store.ledger('plot')).map(({ entry }) => entry)).toEqual([1]);
    expect((await store.ledger('yard')).map(({ entry }) => entry)).toEqual([1, 2]);
  });
});

describe('a ledger from before people had ids', () => {
  const people = (...names: string[]): Fact => ({
    ...importing,
    file: { ...importing.file, household: { people: 2, members: names.map((name) => ({ name })) } },
  });
  const asWritten = (fact: object) => entryOf(fact as Fact);
  const ids = async (...facts: object[]) => {
    const store = await stockedStore();
    await store.append('plot', 0, facts.map(asWritten));
    return (await store.ledger('plot')).flatMap(({ fact }) => {
      if (fact.kind === 'garden-imported') return (fact.file.household?.members ?? []).map(({ id }) => id);
      if (fact.kind === 'member-kept') return [fact.member.id];
      return fact.kind === 'member-gone' || fact.kind === 'mail-stopped' ? [fact.id] : [];
    });
  };

  test('gives everybody one of their own as it is read, the same in a later file', async () => {
    expect(await ids(people('Ottilie', 'Bram'))).toEqual(['ottilie', 'bram']);
    expect(await ids(people('Ottilie', 'Bram'), people('Bram', 'Ida'))).toEqual(['ottilie', 'bram', 'bram', 'ida']);
    expect(await ids(people('Ida', 'IDA'))).toEqual(['ida', 'ida-2']);
  });

  test('follows a name to the new one, and whoever leaves by theirs', async () => {
    const renamed = { kind: 'member-kept', member: { name: 'Bram Oost' }, formerName: 'Bram' };
    const gone = { kind: 'member-gone', name: 'Bram Oost' };
    expect(await ids(people('Ottilie', 'Bram'), renamed, gone)).toEqual(['ottilie', 'bram', 'bram', 'bram']);
    const newcomer = { kind: 'member-kept', member: { name: 'Bram' } };
    expect((await ids(people('Bram'), renamed, newcomer)).at(-1)).toBe('bram-2');
  });

  test('keeps the ids that were told', async () => {
    const told = { kind: 'member-kept', member: { id: 'b-7', name: 'Bram' } };
    expect(await ids(people('Ottilie'), told, people('Bram'))).toEqual(['ottilie', 'b-7', 'b-7']);
  });
});
