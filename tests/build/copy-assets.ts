/**
 * Second half of the build: carries the files along that the compiler leaves out, and makes the command runnable.
 */
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { copyAssets } from './assets.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const copied = copyAssets(root, join(root, 'dist'));
chmodSync(join(root, 'dist', 'src', 'cli', 'main.js'), 0o755);
console.log(`Copied ${copied.length} files into dist/.`);
