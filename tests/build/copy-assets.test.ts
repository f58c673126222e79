import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { copyAssets } from './assets.ts';

function folderWith(paths: readonly string[]): string {
  const root = mkdtempSync(join(tmpdir(), 'loamtide-build-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const path of paths) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), `text of ${path}`);
  }
  return root;
}

test('what the compiler does not write is carried to the same place', () => {
  const root = folderWith([
    'src/handbook/station-table.csv.gz',
    'src/web/static/page.css',
    'src/web/page.tsx',
    'src/cli/main.ts',
    'demo-data/garden.yaml',
    'demo-data/weather/record.csv',
    'docs/mulching.md',
    'docs/images/week.png',
    'tests/notes.txt',
  ]);
  const dist = join(root, 'dist');
  expect(copyAssets(root, dist)).toEqual([
    'demo-data/garden.yaml',
    'demo-data/weather/record.csv',
    'docs/images/week.png',
    'docs/mulching.md',
    'src/handbook/station-table.csv.gz',
    'src/web/static/page.css',
  ]);
  expect(readFileSync(join(dist, 'src/web/static/page.css'), 'utf8')).toBe('text of src/web/static/page.css');
  expect(existsSync(join(dist, 'src/cli/main.ts'))).toBe(false);
  expect(existsSync(join(dist, 'tests'))).toBe(false);
});

test('a file of an earlier build gives way to the new one', () => {
  const root = folderWith(['src/web/page.css', 'demo-data/garden.yaml', 'docs/mulching.md', 'dist/src/web/page.css']);
  copyAssets(root, join(root, 'dist'));
  expect(readFileSync(join(root, 'dist/src/web/page.css'), 'utf8')).toBe('text of src/web/page.css');
});
