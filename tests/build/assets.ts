/**
 * Files that are not program text but that the program reads beside itself.
 */
import { cpSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Folders whose every file is carried along, and for src those files that the compiler does not write. */
const WHOLE_FOLDERS = ['demo-data', 'docs'];
const PROGRAM_FOLDERS = ['src'];

/** Copies them to the same places under another folder. Returns what was copied, in order. */
export function copyAssets(root: string, into: string): string[] {
  const assets = [
    ...WHOLE_FOLDERS.flatMap((folder) => filesIn(root, folder)),
    ...PROGRAM_FOLDERS.flatMap((folder) => filesIn(root, folder)).filter((path) => !/\.tsx?$/.test(path)),
  ].sort();
  for (const path of assets) cpSync(join(root, path), join(into, path));
  return assets;
}

function filesIn(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((path) => statSync(join(root, path)).isFile());
}
