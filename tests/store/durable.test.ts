import { linkSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { isSameFile } from '../../src/store/durable.ts';
import { tempFolder } from './temp-folder.ts';

test('one file is the same under each of its names; a copy on a disk of its own is not, whatever its number', () => {
  const folder = tempFolder();
  const [one, link, copy] = ['one', 'link', 'copy'].map((name) => join(folder, name)) as [string, string, string];
  for (const file of [one, copy]) writeFileSync(file, 'leaf mould');
  linkSync(one, link);
  const { dev, ino } = statSync(one);
  expect(isSameFile(statSync(link), { dev, ino })).toBe(true);
  expect(isSameFile(statSync(copy), { dev, ino })).toBe(false);
  expect(isSameFile({ dev: dev + 1, ino }, { dev, ino })).toBe(false);
  expect(isSameFile({ dev, ino }, undefined)).toBe(false);
});
