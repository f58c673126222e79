import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { otherLines, placesToLook } from './other-nodes.ts';

/** Folders with a program each that says it is a Node.js of a version. */
function foldersOf(...versions: string[]): string[] {
  const root = mkdtempSync(join(tmpdir(), 'loamtide-nodes-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  return versions.map((version) => {
    const folder = join(root, version);
    mkdirSync(folder);
    writeFileSync(join(folder, 'node'), `#!/bin/sh\necho v${version}\n`);
    chmodSync(join(folder, 'node'), 0o755);
    return folder;
  });
}

test('one of each line for long use is found: not the present one, none of a line for a while, none too old', () => {
  const folders = foldersOf('18.20.0', '20.1.0', '22.11.0', '23.1.0', '24.2.0');
  expect(otherLines(folders, '20.20.2').map(({ version }) => version)).toEqual(['22.11.0', '24.2.0']);
});

test('a folder without a program is passed over, and the present one found where it stands', () => {
  expect(otherLines(['/nowhere'], '20.0.0')).toEqual([]);
  expect(otherLines([dirname(process.execPath)])).toEqual([]);
});

test('folders are named in NODE_LTS', () => {
  expect(placesToLook({ NODE_LTS: '/opt/a:/opt/b' })).toEqual(expect.arrayContaining(['/opt/a', '/opt/b']));
});
