/**
 * The program as it is built, run by Node alone: its plans are made in a thread of what was built.
 */
import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, onTestFinished, test } from 'vitest';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { tempFolder } from '../store/temp-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const BUILD_MS = 300_000;
const ADDRESS = /at (http:\/\/127\.0\.0\.1:\d+)\//;
const FEED = /\/feed\/\S+\.ics/;

test(
  'the built server plans its demo in a thread, serves the feed of it, and stops when it is told',
  async () => {
    await promisify(execFile)('npm', ['run', '-s', 'build'], { cwd: ROOT });
    const env = { ...process.env, LOAMTIDE_DATA: tempFolder() };
    const main = 'dist/src/cli/main.js';
    const argv = [main, 'serve', '--port', '0', '--today', '2027-05-12'];
    const server = spawn(process.execPath, argv, { cwd: ROOT, env });
    onTestFinished(() => void server.kill('SIGKILL'));
    const told = { text: '' };
    const address = await new Promise<string>((resolve, reject) => {
      server.stdout.on('data', (chunk) => {
        told.text += String(chunk);
        if (told.text.includes('Stop it with')) resolve(ADDRESS.exec(told.text)?.[1] ?? '');
      });
      server.on('exit', (code) => reject(new Error(`The server ended with ${code}: ${told.text}`)));
    });
    const listed = await promisify(execFile)(process.execPath, [main, 'feed', 'list'], { cwd: ROOT, env });
    const body = await (await fetch(`${address}${FEED.exec(listed.stdout)?.[0]}`)).text();
    expect(seenByIcalJs(body).length).toBeGreaterThan(50);
    const ended = once(server, 'exit');
    server.kill('SIGTERM');
    expect(await ended).toEqual([0, null]);
  },
  BUILD_MS,
);
