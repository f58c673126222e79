import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, it } from 'vitest';
import { renderFeed } from '../../src/calendar/render-feed.ts';
import { exampleFeed, varied } from './example-feed.ts';

const program = fileURLToPath(new URL('print-feed.ts', import.meta.url));

it.each([
  ['America/Edmonton', 'en_CA.UTF-8'],
  ['Pacific/Auckland', 'ar_EG.UTF-8'],
  ['UTC', 'C'],
])('the feed has the same octets on a machine in %s speaking %s', async (TZ, LC_ALL) => {
  const env = { ...process.env, TZ, LC_ALL };
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', program], { env });
  expect(stdout).toBe(renderFeed(exampleFeed(varied)));
});
