import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  dependencyTables,
  isAllowed,
  type LockFile,
  type Manifest,
  packagesRunOn,
  TABLE_BEGINS,
  WHY,
} from './dependencies.ts';

const text = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const manifest: Manifest = JSON.parse(text('package.json'));
const lock: LockFile = JSON.parse(text('package-lock.json'));

test('docs/dependencies.md tells what package.json and the lock file say; npm run dependencies writes it', () => {
  const [, tables] = text('docs/dependencies.md').split(TABLE_BEGINS);
  expect(`${TABLE_BEGINS}${tables}`).toBe(dependencyTables(packagesRunOn(manifest, lock)));
});

test('every package the program names is there for a reason that is told', () => {
  expect(Object.keys(WHY).sort()).toEqual(Object.keys(manifest.dependencies).sort());
});

test('every package the program runs on may be run, changed and passed on', () => {
  const found = packagesRunOn(manifest, lock);
  expect(found.length).toBeGreaterThan(40);
  expect(found.filter(({ licence }) => !isAllowed(licence)).map(({ name, licence }) => `${name}: ${licence}`)).toEqual(
    [],
  );
});

test.each([
  ['MIT', true],
  ['(MIT OR WTFPL)', true],
  ['(GPL-3.0 AND MIT)', false],
  ['AGPL-3.0', false],
  ['none named', false],
])('a licence of %s is allowed: %s', (licence, allowed) => {
  expect(isAllowed(licence)).toBe(allowed);
});

test('the lock file names each package by its contents, and no place it was got from', () => {
  const packages = Object.entries(lock.packages).filter(([path]) => path !== '');
  expect(packages.filter(([, { integrity }]) => !/^sha512-/.test(integrity ?? '')).map(([path]) => path)).toEqual([]);
  expect(packages.filter(([, { resolved }]) => resolved !== undefined).map(([path]) => path)).toEqual([]);
});

test('versions are exact, so that the same program is installed everywhere', () => {
  const exact = Object.values(manifest.dependencies).filter((version) => /^\d+\.\d+\.\d+$/.test(version));
  expect(exact).toHaveLength(Object.keys(manifest.dependencies).length);
});

test('a package whose others are told counts them through', () => {
  const small: LockFile = {
    packages: {
      'node_modules/yaml': { version: '2.0.0', license: 'ISC', dependencies: { a: '1' } },
      'node_modules/a': { version: '1.0.0', license: 'MIT', dependencies: { b: '1', yaml: '2' } },
      'node_modules/b': { version: '1.0.1', license: 'MIT' },
    },
  };
  const found = packagesRunOn({ dependencies: { yaml: '2.0.0' } }, small);
  expect(found.map(({ name, brings }) => [name, brings])).toEqual([
    ['yaml', ['a', 'b', 'yaml']],
    ['a', ['b', 'a', 'yaml'].sort()],
    ['b', []],
  ]);
});
