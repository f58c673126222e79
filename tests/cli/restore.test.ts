import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { migrations } from '../../migrations/index.ts';
import { connect } from '../../src/store/connection.ts';
import { migrate } from '../../src/store/migrate.ts';
import { openStore } from '../../src/store/store.ts';
import { loamtideIn, NOW, SMALL_GARDEN, tempFolder } from './loamtide.ts';

const template = mkdtempSync(join(tmpdir(), 'loamtide-restore-'));
afterAll(() => rmSync(template, { recursive: true, force: true }));

beforeAll(async () => {
  writeFileSync(join(template, 'garden.yaml'), SMALL_GARDEN);
  const loamtide = loamtideIn(template);
  await loamtide('garden', 'import', 'garden.yaml');
  await loamtide('backup', 'copy.db');
  await loamtide('feed', 'add');
});

/** A garden with a copy of it, and a feed added after the copy. */
function copied() {
  const folder = tempFolder();
  cpSync(template, folder, { recursive: true });
  const data = join(folder, 'data');
  return { folder, loamtide: loamtideIn(folder), data, database: join(data, 'loamtide.db') };
}

function changed(file: string, sql: string): void {
  const sqlite = new SqliteFile(file);
  sqlite.pragma('foreign_keys = OFF');
  sqlite.exec(sql);
  sqlite.close();
}

/** Lays the same gardens into a database as a program of an older version had it. */
async function atVersion(file: string, version: number): Promise<void> {
  const whole = new SqliteFile(file, { readonly: true });
  const rows = (table: string) => whole.prepare<[], Record<string, unknown>>(`select * from ${table}`).all();
  const [gardens, ledger] = [rows('gardens'), rows('ledger')];
  whole.close();
  rmSync(file);
  const older = connect(file);
  await migrate(older, migrations.slice(0, version), NOW);
  const add = (table: string, row: Record<string, unknown>) => {
    const names = Object.keys(row);
    const marks = names.map(() => '?').join(', ');
    older.sqlite.prepare(`insert into ${table} (${names.join(', ')}) values (${marks})`).run(...Object.values(row));
  };
  for (const row of gardens) add('gardens', row);
  for (const row of ledger) add('ledger', row);
  older.close();
}

const asides = (data: string) => readdirSync(data).filter((name) => name.includes('.replaced.'));

describe('restore', () => {
  test('puts a copy in place, says what it holds, and keeps what was there', async () => {
    const { loamtide, data, database } = copied();
    const { code, out } = await loamtide('restore', 'copy.db');
    expect(code).toBe(0);
    expect(out).toContain('Put back copy.db, which was found sound:');
    expect(out).toContain('Hollow Lane (hollow-lane): 1 changes, the last of 2027-04-18');
    expect((await loamtide('feed', 'list')).out).not.toContain('feed-1');
    expect((statSync(database).mode & 0o777).toString(8)).toBe('600');
    const [aside = ''] = asides(data);
    expect(aside).toBe(`loamtide.db.replaced.${NOW.slice(0, 19).replace(/[-:]/g, '')}Z`);
    expect(out).toContain(`What was here before is kept as ${join(data, aside)}`);
    await loamtide('restore', join(data, aside));
    expect((await loamtide('feed', 'list')).out).toContain('feed-1');
  });

  test('brings a household to a new computer, where there is no data folder', async () => {
    const { folder } = copied();
    const elsewhere = tempFolder();
    copyFileSync(join(folder, 'copy.db'), join(elsewhere, 'copy.db'));
    const { code, out } = await loamtideIn(elsewhere)('restore', 'copy.db');
    expect({ code, out }).toMatchObject({ code: 0, out: expect.stringContaining('no database here before') });
    expect((await loamtideIn(elsewhere)('plan')).out).toContain('Left bay');
  });

  test('signs everybody out: whoever was in when the copy was made may have been signed out since', async () => {
    const { folder, loamtide, database } = copied();
    const copy = join(folder, 'copy.db');
    changed(copy, `insert into sessions values ('a-hash', '${NOW}', '${NOW}')`);
    expect((await loamtide('restore', 'copy.db')).code).toBe(0);
    const heldIn = (file: string) => {
      const sqlite = new SqliteFile(file, { readonly: true });
      const count = sqlite.prepare('select count(*) from sessions').pluck().get();
      sqlite.close();
      return count;
    };
    expect([heldIn(copy), heldIn(database)]).toEqual([1, 0]);
  });

  test('is refused while a server uses the data, and the server is not disturbed', async () => {
    const { loamtide, database } = copied();
    const server = await openStore({ file: database });
    onTestFinished(() => server.close());
    const { code, err } = await loamtide('restore', 'copy.db');
    expect(code).toBe(2);
    expect(err).toContain('A program is using this data');
    expect(await server.feeds('hollow-lane')).toHaveLength(1);
  });

  test('takes a database with its log, as a folder copied whole has them', async () => {
    const { loamtide, database } = copied();
    const store = await openStore({ file: database });
    onTestFinished(() => store.close());
    const copy = join(tempFolder(), 'loamtide.db');
    for (const ending of ['', '-wal']) copyFileSync(database + ending, copy + ending);
    await store.close();
    await loamtide('feed', 'revoke', 'feed-1');
    expect((await loamtide('restore', copy)).code).toBe(0);
    expect((await loamtide('feed', 'list')).out).toContain('.ics');
  });

  test('takes one of an older version, which the next start brings up to date after a copy', async () => {
    const { loamtide, data, folder } = copied();
    const copy = join(folder, 'copy.db');
    await atVersion(copy, 8);
    const { code, out } = await loamtide('restore', 'copy.db');
    expect(code).toBe(0);
    expect(out).toContain(
      `It is of version 8: the next start copies it and brings it to version ${migrations.length}.`,
    );
    expect((await loamtide('plan')).code).toBe(0);
    expect(readdirSync(data).filter((name) => name.startsWith('loamtide.db.version-8.'))).toHaveLength(1);
  });
});

describe('a copy that is not good is refused, and nothing changes', () => {
  test.each<[string, (copy: string) => void, string]>([
    ['is no database', (copy) => writeFileSync(copy, 'twine and labels\n'.repeat(500)), 'is no database of Loamtide.'],
    ['is empty', (copy) => truncateSync(copy, 0), 'is no database of Loamtide.'],
    ['is another program’s', (copy) => changed(copy, 'drop table migrations'), 'is no database of Loamtide.'],
    ['was cut off', (copy) => truncateSync(copy, statSync(copy).size / 2), 'is damaged:'],
    [
      'has a row that belongs nowhere',
      (copy) => changed(copy, "delete from gardens where id = 'hollow-lane'"),
      'belongs to no row of gardens',
    ],
    [
      'is of a newer program',
      (copy) => changed(copy, "insert into migrations values (99, 'x', 'y')"),
      'has version 99',
    ],
    [
      'holds a fact nobody knows',
      (copy) => changed(copy, `update ledger set fact = '{"kind":"rain-danced"}'`),
      'garden hollow-lane: Its facts cannot be read.',
    ],
  ])('when it %s', async (_, spoil, complaint) => {
    const { loamtide, folder, data, database } = copied();
    spoil(join(folder, 'copy.db'));
    const before = readFileSync(database);
    const { code, err } = await loamtide('restore', 'copy.db');
    expect(code).toBe(2);
    expect(err).toContain(complaint);
    expect(readFileSync(database).equals(before)).toBe(true);
    expect(asides(data)).toEqual([]);
    expect(readdirSync(data).filter((name) => name.includes('incoming'))).toEqual([]);
  });

  test.each([
    ['nowhere.db', 'nowhere.db: does not exist.'],
    ['data', 'data: is not a file.'],
    ['data/loamtide.db', 'is the database itself.'],
  ])('when it is %s', async (name, complaint) => {
    const { loamtide } = copied();
    const { code, err } = await loamtide('restore', name);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
  });
});

describe('a restore that was killed', () => {
  test('after the copy was found good: the next start puts it in place, the old one with its log aside', async () => {
    const { loamtide, folder, data, database } = copied();
    const store = await openStore({ file: database });
    const [db, log] = [readFileSync(database), readFileSync(`${database}-wal`)];
    await store.close();
    // As a killed server leaves it, with a log; and as a killed restore leaves it, with the copy ready.
    writeFileSync(database, db);
    writeFileSync(`${database}-wal`, log);
    copyFileSync(join(folder, 'copy.db'), `${database}.next`);
    expect((await loamtide('feed', 'list')).out).not.toContain('feed-1');
    expect(existsSync(`${database}.next`)).toBe(false);
    expect(asides(data)).toHaveLength(2);
  });

  test('before: the old one stands, and what was begun is cleared away by the next', async () => {
    const { loamtide, data, database } = copied();
    mkdirSync(data, { recursive: true });
    writeFileSync(`${database}.incoming`, 'half a copy');
    expect((await loamtide('feed', 'list')).out).toContain('feed-1');
    expect((await loamtide('restore', 'copy.db')).code).toBe(0);
    expect(readdirSync(data).filter((name) => name.includes('incoming'))).toEqual([]);
  });
});
