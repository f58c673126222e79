/**
 * A database that was damaged from outside: told with the mend, not damaged further, and put right by a copy.
 */
import {
  closeSync,
  cpSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStore } from '../../src/store/store.ts';
import { loamtideIn, NOW, SMALL_GARDEN, tempFolder } from '../cli/loamtide.ts';

const PAGE_OCTETS = 4096;

const template = mkdtempSync(join(tmpdir(), 'loamtide-damaged-'));
afterAll(() => rmSync(template, { recursive: true, force: true }));

beforeAll(async () => {
  writeFileSync(join(template, 'garden.yaml'), SMALL_GARDEN);
  const loamtide = loamtideIn(template);
  await loamtide('garden', 'import', 'garden.yaml');
  await loamtide('feed', 'add');
  const store = await openStore({ file: join(template, 'data', 'loamtide.db') });
  await store.renewCopies(NOW, 12);
  await store.close();
});

/** Writes nonsense over part of a file. */
function scribble(file: string, from: number, octets: number): void {
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(octets, 'mud '), 0, octets, from);
  closeSync(handle);
}

test.each<[string, (database: string) => void, RegExp]>([
  [
    'its beginning is scribbled over',
    (file) => scribble(file, 0, 100),
    /is not a database, or its beginning is damaged/,
  ],
  [
    'every page but the first is',
    (file) => scribble(file, PAGE_OCTETS, statSync(file).size - PAGE_OCTETS),
    /is damaged/,
  ],
  ['it was cut in half', (file) => truncateSync(file, Math.floor(statSync(file).size / 2)), /is damaged/],
  ['it was emptied', (file) => truncateSync(file, 0), /The database is gone, but copies of it are kept/],
  ['it was removed', (file) => rmSync(file), /The database is gone, but copies of it are kept|does not exist/],
])('when %s, that is told, nothing is written, and the daily copy puts it right', async (_, damage, complaint) => {
  const folder = tempFolder();
  cpSync(template, folder, { recursive: true });
  const database = join(folder, 'data', 'loamtide.db');
  damage(database);
  const before = statSync(database, { throwIfNoEntry: false }) && readFileSync(database);
  const loamtide = loamtideIn(folder);
  for (const argv of [['week'], ['serve', '--port', '0'], ['backup', 'copy.db']]) {
    const { code, err } = await loamtide(...argv);
    expect({ argv, code }).toEqual({ argv, code: expect.toSatisfy((is: number) => is === 1 || is === 2) });
    expect(err).toMatch(complaint);
    expect(err).not.toMatch(/^\s+at /m);
  }
  if (before !== undefined) expect(readFileSync(database).equals(before)).toBe(true);
  const copies = join(folder, 'data', 'copies');
  const [copy = ''] = readdirSync(copies);
  expect((await loamtide('restore', join(copies, copy))).code).toBe(0);
  expect((await loamtide('feed', 'list')).out).toContain('feed-1');
});

test('a log of nonsense is passed over: all that was promised lies in the database', async () => {
  const folder = tempFolder();
  cpSync(template, folder, { recursive: true });
  writeFileSync(join(folder, 'data', 'loamtide.db-wal'), 'mud '.repeat(20_000));
  const { code, out } = await loamtideIn(folder)('feed', 'list');
  expect({ code, out }).toMatchObject({ code: 0, out: expect.stringContaining('feed-1') });
});

test('a copy is never made of a damaged database, and the older ones stay', async () => {
  const folder = tempFolder();
  cpSync(template, folder, { recursive: true });
  const file = join(folder, 'data', 'loamtide.db');
  const store = await openStore({ file });
  scribble(file, PAGE_OCTETS * 3, PAGE_OCTETS * 8);
  const tomorrow = new Date(Date.parse(NOW) + 86_400_000).toISOString();
  await expect(store.renewCopies(tomorrow, 12)).rejects.toThrow(/damaged/);
  expect(await store.checkUp(tomorrow)).toContainEqual(
    expect.objectContaining({ where: file, what: expect.stringContaining('damaged') }),
  );
  await store.close();
  expect(readdirSync(join(folder, 'data', 'copies'))).toHaveLength(1);
});
