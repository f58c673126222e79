import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { databaseIn, openStore } from '../../src/store/store.ts';
import { NOON, skipping } from './entries.ts';
import { stockedStore } from './stocked.ts';
import { tempFolder } from './temp-folder.ts';

describe('the store', () => {
  test('makes its folder and file where there are none', async () => {
    const file = databaseIn(join(tempFolder(), 'new', 'data'));
    await (await openStore({ file })).close();
    expect(existsSync(file)).toBe(true);
  });

  test('lists gardens in the order they came', async () => {
    const store = await stockedStore();
    await store.createGarden({ id: 'attic', name: 'Attic', createdAt: '2027-05-01T00:00:00.000Z' });
    expect(await store.gardenIds()).toEqual(['plot', 'attic']);
  });

  test('refuses a second garden of the same id', async () => {
    const store = await stockedStore();
    await expect(store.createGarden({ id: 'plot', name: 'Other', createdAt: NOON })).rejects.toThrow(/UNIQUE/);
  });
});

describe('a copy made by hand', () => {
  test('is a whole store that opens by itself, for its owner alone', async () => {
    const folder = tempFolder();
    const store = await stockedStore(join(folder, 'loamtide.db'));
    await store.append('plot', 0, [skipping('a')]);
    await store.backup(join(folder, 'copy.db'));
    await store.append('plot', 1, [skipping('b')]);

    const copy = await openStore({ file: join(folder, 'copy.db') });
    onTestFinished(() => copy.close());
    expect(await copy.ledger('plot')).toHaveLength(1);
    expect((statSync(join(folder, 'copy.db')).mode & 0o777).toString(8)).toBe('600');
  });

  test('made while a transaction is open holds none of it, and keeps nobody waiting', async () => {
    const folder = tempFolder();
    const store = await stockedStore(join(folder, 'loamtide.db'));
    await store.transaction(async (shelves) => {
      await shelves.append('plot', 0, [skipping('a')]);
      await store.backup(join(folder, 'copy.db'));
      await shelves.append('plot', 1, [skipping('b')]);
    });
    const copy = await openStore({ file: join(folder, 'copy.db') });
    onTestFinished(() => copy.close());
    expect(await copy.ledger('plot')).toEqual([]);
  });

  test('never replaces a file that is there', async () => {
    const folder = tempFolder();
    const store = await stockedStore(join(folder, 'loamtide.db'));
    await store.backup(join(folder, 'copy.db'));
    await expect(store.backup(join(folder, 'copy.db'))).rejects.toThrow(/a file of this name already/);
    expect(readdirSync(folder).filter((name) => name.startsWith('copy'))).toEqual(['copy.db']);
  });
});
