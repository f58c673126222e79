import { mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loamtideIn, tempFolder, withGarden } from './loamtide.ts';

test('backup makes a copy that only its owner can read, and that works in another data folder', async () => {
  const { folder, loamtide } = await withGarden();
  await loamtide('feed', 'add');
  const { code, out } = await loamtide('backup', 'copy.db');
  expect(code).toBe(0);
  expect(out).toContain('Keep it private');
  expect(statSync(join(folder, 'copy.db')).mode & 0o777).toBe(0o600);
  const elsewhere = tempFolder();
  mkdirSync(join(elsewhere, 'data'));
  renameSync(join(folder, 'copy.db'), join(elsewhere, 'data', 'loamtide.db'));
  expect((await loamtideIn(elsewhere)('feed', 'list')).out).toBe((await loamtide('feed', 'list')).out);
});

test.each([
  ['data/loamtide.db', 'There is a file of this name already.'],
  ['nowhere/copy.db', 'nowhere/copy.db: lies in a folder that does not exist.'],
  ['x'.repeat(400), 'is no name a file can have.'],
  // What is added to the name while the copy is made, and by the database beside it, makes it too long.
  ['x'.repeat(245), 'is no name a file can have.'],
])('backup to %s is refused', async (file, complaint) => {
  const { loamtide } = await withGarden();
  const { code, err } = await loamtide('backup', file);
  expect(code).toBe(2);
  expect(err).toContain(complaint);
});
