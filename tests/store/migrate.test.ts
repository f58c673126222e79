import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { sql } from 'kysely';
import { describe, expect, onTestFinished, test } from 'vitest';
import { migrations } from '../../migrations/index.ts';
import type { Migration } from '../../migrations/migration.ts';
import { type Connection, connect } from '../../src/store/connection.ts';
import { migrate } from '../../src/store/migrate.ts';
import { openStore } from '../../src/store/store.ts';
import { NOON, skipping } from './entries.ts';
import { stockedStore } from './stocked.ts';
import { tempFolder } from './temp-folder.ts';

const addSheds: Migration = {
  version: migrations.length + 1,
  name: 'sheds',
  up: (db) => db.schema.createTable('sheds').addColumn('id', 'text').execute(),
};

const breakHalfway: Migration = {
  version: migrations.length + 2,
  name: 'half-done',
  async up(db) {
    await db.schema.createTable('ponds').addColumn('id', 'text').execute();
    await sql`insert into no_such_table values (1)`.execute(db);
  },
};

const KNOWN = migrations.map(({ version }) => version);

function opened(file: string): Connection {
  const connection = connect(file);
  onTestFinished(() => {
    connection.sqlite.close();
  });
  return connection;
}

function tablesOf(sqlite: SqliteFile.Database): unknown[] {
  return sqlite.prepare("select name from sqlite_master where type = 'table' order by name").pluck().all();
}

function versionsOf(sqlite: SqliteFile.Database): unknown[] {
  return sqlite.prepare('select version from migrations order by version').pluck().all();
}

describe('migrations', () => {
  test('are numbered from one without a gap', () => {
    expect(migrations.map(({ version }) => version)).toEqual(migrations.map((_, index) => index + 1));
  });

  test('every table carries the garden, but their own and those of whoever signs in to all of it', async () => {
    const connection = opened(':memory:');
    const { sqlite } = connection;
    await migrate(connection, migrations, NOON);
    const withoutGarden = tablesOf(sqlite).filter(
      (table) => !sqlite.prepare("select 1 from pragma_table_info(?) where name = 'garden_id'").get(table),
    );
    expect(withoutGarden).toEqual(['gardens', 'household_password', 'migrations', 'sessions']);
  });

  test('are run once each, and the moment is kept', async () => {
    const connection = opened(':memory:');
    await migrate(connection, migrations, NOON);
    await migrate(connection, migrations, '2028-01-01T00:00:00.000Z');
    const rows = connection.sqlite.prepare('select version, name, applied_at from migrations').all();
    expect(rows).toEqual(migrations.map(({ version, name }) => ({ version, name, applied_at: NOON })));
  });

  test('a step that fails leaves nothing of itself, and those before it stand', async () => {
    const connection = opened(':memory:');
    const { sqlite } = connection;
    const steps = [...migrations, addSheds, breakHalfway];
    await expect(migrate(connection, steps, NOON)).rejects.toThrow(/no_such_table/);
    expect(versionsOf(sqlite)).toEqual([...KNOWN, addSheds.version]);
    expect(tablesOf(sqlite)).toContain('sheds');
    expect(tablesOf(sqlite)).not.toContain('ponds');
  });
});

describe('the copy made before migrating', () => {
  test('holds the data of before, under a name with version and moment', async () => {
    const folder = tempFolder();
    const file = join(folder, 'loamtide.db');
    const store = await stockedStore(file);
    await store.append('plot', 0, [skipping('turn/pile:p-1')]);

    const copy = await migrate(opened(file), [...migrations, addSheds], '2027-04-18T09:30:00.000Z');

    expect(copy).toBe(`${file}.version-${migrations.length}.20270418T093000Z.copy`);
    expect((statSync(copy ?? '').mode & 0o777).toString(8)).toBe('600');
    const before = await openStore({ file: copy ?? '' });
    onTestFinished(() => before.close());
    expect((await before.ledger('plot')).map(({ fact }) => fact.kind)).toEqual(['tasks-skipped']);
  });

  test('is made before the first step, so it is there when a step fails', async () => {
    const folder = tempFolder();
    const file = join(folder, 'loamtide.db');
    await stockedStore(file);
    await expect(migrate(opened(file), [...migrations, addSheds, breakHalfway], NOON)).rejects.toThrow();
    const copy = readdirSync(folder).find((name) => name.endsWith('.copy')) ?? '';
    const sqlite = new SqliteFile(join(folder, copy), { readonly: true });
    onTestFinished(() => {
      sqlite.close();
    });
    expect(versionsOf(sqlite)).toEqual(KNOWN);
    expect(tablesOf(sqlite)).not.toContain('sheds');
  });

  test('gets a name of its own where a start of the same moment left one', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    await stockedStore(file);
    const first = await migrate(opened(file), [...migrations, addSheds, breakHalfway], NOON).catch(() => undefined);
    expect(first).toBeUndefined();
    const pond = { ...addSheds, version: breakHalfway.version, name: 'pond', up: async () => undefined };
    const connection = opened(file);
    connection.sqlite.exec(`delete from migrations where version > ${migrations.length}; drop table sheds`);
    const second = await migrate(connection, [...migrations, addSheds, pond], NOON);
    expect(second).toMatch(/Z\.2\.copy$/);
  });

  test('is not made of a new database, nor of one already up to date', async () => {
    const folder = tempFolder();
    const file = join(folder, 'loamtide.db');
    await (await openStore({ file })).close();
    await (await openStore({ file })).close();
    expect(readdirSync(folder)).toEqual(['loamtide.db', 'loamtide.db.lock']);
  });
});

describe('a database newer than the program', () => {
  test('is refused with its version and what to do, and is not touched', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    await (await openStore({ file })).close();
    const { sqlite } = opened(file);
    sqlite.exec("insert into migrations values (99, 'from-the-future', '2030-01-01T00:00:00.000Z')");

    const refusal = await openStore({ file }).catch((error: unknown) => error);

    expect(refusal).toMatchObject({
      name: 'InputRefused',
      problems: [
        {
          where: file,
          what: `The database has version 99; this program knows versions up to ${KNOWN.length}.`,
          mend: expect.stringContaining('newer program'),
        },
      ],
    });
    expect(versionsOf(sqlite)).toEqual([...KNOWN, 99]);
  });
});
