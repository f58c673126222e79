/**
 * A weather file of two hundred megabytes is read in the room that one of two takes.
 */
import { execFile } from 'node:child_process';
import { closeSync, openSync, statSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { inventedRecord } from '../cli/invented-record.ts';
import { SMALL_GARDEN, tempFolder } from '../cli/loamtide.ts';

const MEBIBYTE = 1024 * 1024;

/** How much more a hundred times the file may take: the heap grows with what is thrown away. House default. */
const MORE_MIB = 120;

/** A file of some length: a record told again and again. */
function writeLarge(file: string, bytes: number): void {
  const [header = '', ...rows] = inventedRecord('1997-01-01', '2026-12-31').trim().split('\n');
  const once = `${rows.join('\n')}\n`;
  const handle = openSync(file, 'w');
  writeSync(handle, `${header}\n`);
  for (let written = 0; written < bytes; written += once.length) writeSync(handle, once);
  closeSync(handle);
}

test('the room a file takes does not grow with it', async () => {
  const folder = tempFolder();
  writeFileSync(join(folder, 'garden.yaml'), SMALL_GARDEN);
  const node = async (...argv: string[]): Promise<{ code: number; peakMiB: number }> => {
    const script = new URL('../fuzz/peak-memory.ts', import.meta.url).pathname;
    const tsx = new URL('../../node_modules/tsx/dist/loader.mjs', import.meta.url).href;
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', tsx, script, ...argv], { cwd: folder });
    return JSON.parse(stdout);
  };
  expect((await node('garden', 'import', 'garden.yaml')).code).toBe(0);
  const peaks: number[] = [];
  for (const size of [2, 200]) {
    const file = `${size}.csv`;
    writeLarge(join(folder, file), size * MEBIBYTE);
    expect(statSync(join(folder, file)).size).toBeGreaterThan(size * MEBIBYTE);
    const { code, peakMiB } = await node('weather', 'import', file, '--replace');
    expect(code).toBe(0);
    peaks.push(peakMiB);
  }
  console.log(`Peak memory: ${peaks[0]} MiB for 2 MiB, ${peaks[1]} MiB for 200 MiB`);
  expect((peaks[1] ?? 0) - (peaks[0] ?? 0)).toBeLessThan(MORE_MIB);
}, 900_000);
