import { chmodSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { type Connection, connect, waitBriefly } from '../../src/store/connection.ts';
import { writing } from '../../src/store/tables.ts';
import { tempFolder } from './temp-folder.ts';

function opened(file: string): Connection {
  const connection = connect(file);
  onTestFinished(() => {
    connection.sqlite.close();
  });
  return connection;
}

function permissions(path: string): string {
  return (statSync(path).mode & 0o777).toString(8);
}

describe('what a connection promises', () => {
  test('writes go through a log that is flushed to the disk at every commit', () => {
    const { sqlite } = opened(join(tempFolder(), 'loamtide.db'));
    expect(sqlite.pragma('journal_mode', { simple: true })).toBe('wal');
    // https://www.sqlite.org/pragma.html#pragma_synchronous: 2 is FULL.
    expect(sqlite.pragma('synchronous', { simple: true })).toBe(2);
  });

  test('rows of an unknown garden are refused by the database itself', () => {
    const { sqlite } = opened(':memory:');
    expect(sqlite.pragma('foreign_keys', { simple: true })).toBe(1);
  });

  test('a writer waits five seconds for its turn', () => {
    const { sqlite } = opened(':memory:');
    expect(sqlite.pragma('busy_timeout', { simple: true })).toBe(5_000);
  });

  test('a writer that has pages to answer waits one', () => {
    const connection = opened(':memory:');
    waitBriefly(connection);
    expect(connection.sqlite.pragma('busy_timeout', { simple: true })).toBe(1_000);
  });
});

describe('who may read the data', () => {
  test('a new folder and its files are for their owner alone', () => {
    const folder = join(tempFolder(), 'data');
    const { sqlite } = opened(join(folder, 'loamtide.db'));
    sqlite.exec('create table beds (id text)');
    expect(permissions(folder)).toBe('700');
    expect(permissions(join(folder, 'loamtide.db'))).toBe('600');
    expect(permissions(join(folder, 'loamtide.db-wal'))).toBe('600');
  });

  test('a file others could read is narrowed', () => {
    const file = join(tempFolder(), 'loamtide.db');
    writeFileSync(file, '');
    chmodSync(file, 0o644);
    opened(file);
    expect(permissions(file)).toBe('600');
  });

  test('a folder that was there keeps its own permissions', () => {
    const folder = join(tempFolder(), 'shared');
    mkdirSync(folder);
    chmodSync(folder, 0o755);
    opened(join(folder, 'loamtide.db'));
    expect(permissions(folder)).toBe('755');
  });

  test('a file that is no database is refused and left as it was', () => {
    const file = join(tempFolder(), 'loamtide.db');
    const shoppingList = 'twine, labels, fleece, and a great deal more of it\n'.repeat(40);
    writeFileSync(file, shoppingList);
    expect(() => connect(file)).toThrow(/not a database.*another folder/s);
    expect(statSync(file).size).toBe(shoppingList.length);
  });
});

describe('the write lock', () => {
  test('is taken when a transaction begins, before anything is read or written', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const [first, second] = [opened(file), opened(file)];
    second.sqlite.pragma('busy_timeout = 0');
    await first.db.transaction().execute(async () => {
      expect(() => second.sqlite.exec('begin immediate')).toThrow(/locked/);
    });
    second.sqlite.exec('begin immediate; commit');
  });

  test('keeps readers out of nothing', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const [first, second] = [opened(file), opened(file)];
    first.sqlite.exec("create table beds (id text); insert into beds values ('north')");
    await first.db.transaction().execute(async () => {
      first.sqlite.exec("update beds set id = 'south'");
      expect(second.sqlite.prepare('select id from beds').pluck().get()).toBe('north');
    });
  });

  test('is not asked for twice when a write is part of a larger one', async () => {
    const { db, sqlite } = opened(':memory:');
    await db.transaction().execute((outer) =>
      writing(outer, async (inner) => {
        expect(inner).toBe(outer);
        expect(sqlite.inTransaction).toBe(true);
      }),
    );
    expect(sqlite.inTransaction).toBe(false);
  });
});
