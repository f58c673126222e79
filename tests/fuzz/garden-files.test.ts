/**
 * Garden files that no gardener writes, and some that one might by mistake.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linesIn } from '../../src/garden/line-of.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { readGardenFile } from '../../src/garden/read-garden-file.ts';
import { loamtideIn, SMALL_GARDEN, tempFolder } from '../cli/loamtide.ts';
import { sampleApp } from '../web/sample-garden.ts';
import { amissIn } from './amiss.ts';
import { ODD_TEXTS } from './odd-values.ts';
import { bomb, REFUSED } from './refused-garden-files.ts';

test.each(Object.entries(REFUSED))('%s is refused with what, where and the mend', (_, text) => {
  expect(() => readGardenFile(text)).toThrow(InputRefused);
  try {
    readGardenFile(text);
  } catch (error) {
    const { problems, message } = error as InputRefused;
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.filter(({ where, what, mend }) => where === '' || what.length < 5 || mend.length < 5)).toEqual([]);
    expect(amissIn({ status: 422, body: message, isPage: false, location: undefined }, text)).toEqual([]);
    const lineOf = linesIn(text);
    for (const { where } of problems.slice(0, 20)) expect(lineOf(where) ?? 1).toBeGreaterThan(0);
  }
});

/** Each taken as it is meant. */
const TAKEN: Readonly<Record<string, string>> = {
  'a byte order mark': `\uFEFF${SMALL_GARDEN}`,
  'line ends of another system': SMALL_GARDEN.replaceAll('\n', '\r\n'),
  'an anchor used once': SMALL_GARDEN.replace('bed: North bed', 'bed: &n North bed').replace(
    'bed: South bed',
    'bed: *n',
  ),
  'the pole': SMALL_GARDEN.replace('44.5', '90').replace('-88.1', '180'),
};

test.each(Object.entries(TAKEN))('%s is taken', (_, text) => {
  expect(readGardenFile(text).beds).toHaveLength(2);
});

test('a good file with a line changed is read or refused, never more', () => {
  const lines = SMALL_GARDEN.split('\n');
  const change = fc.record({
    at: fc.nat(lines.length - 1),
    how: fc.constantFrom('value', 'drop', 'double', 'indent', 'put'),
    odd: fc.constantFrom(...ODD_TEXTS),
  });
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
      const now = [...lines];
      for (const { at, how, odd } of changes) {
        const line = now[at] ?? '';
        if (how === 'value') now[at] = line.replace(/:.*$/, `: ${odd}`);
        if (how === 'drop') now[at] = '';
        if (how === 'double') now[at] = `${line}\n${line}`;
        if (how === 'indent') now[at] = `   ${line}`;
        if (how === 'put') now[at] = odd;
      }
      const text = now.join('\n');
      try {
        readGardenFile(text);
      } catch (error) {
        if (!(error instanceof InputRefused)) throw error;
        const body = error.message;
        return amissIn({ status: 422, body, isPage: false, location: undefined }, text).length === 0;
      }
      return true;
    }),
    { seed: 20270420, numRuns: 150 },
  );
});

test('the program refuses such files with an exit code and a message, packed or in another code', async () => {
  const folder = tempFolder();
  const loamtide = loamtideIn(folder);
  const small = Buffer.from(SMALL_GARDEN);
  const utf16 = Buffer.from(`\uFEFF${SMALL_GARDEN}`, 'utf16le');
  const files: Record<string, Buffer> = {
    bomb: Buffer.from(bomb(9)),
    deep: Buffer.from('['.repeat(200_000)),
    utf16,
    'utf16-big': Buffer.from(utf16).swap16(),
    'gzip-bomb': gzipSync(Buffer.alloc(200 * 1024 * 1024)),
    'half-gzip': gzipSync(small).subarray(0, 60),
    noise: Buffer.from([0x1f, 0x8b, 8, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9]),
    latin: Buffer.from(SMALL_GARDEN.replace('Hollow', 'Hoßow'), 'latin1'),
    empty: Buffer.alloc(0),
  };
  for (const [name, bytes] of Object.entries(files)) {
    writeFileSync(join(folder, name), bytes);
    for (const doing of ['check', 'import']) {
      const { code, err } = await loamtide('garden', doing, name);
      expect([name, code]).toEqual([name, 2]);
      expect(amissIn({ status: 422, body: err, isPage: false, location: undefined }, '')).toEqual([]);
    }
  }
  for (const name of ['nowhere', '.', '\u0000', 'x'.repeat(400), 'bomb/inside', '']) {
    const { code, err } = await loamtide('garden', 'check', name);
    expect([name, code, err.length > 20]).toEqual([name, 2, true]);
  }
  writeFileSync(join(folder, 'garden.yaml'), SMALL_GARDEN);
  expect((await loamtide('garden', 'import', 'garden.yaml')).code).toBe(0);
  for (const name of ['.', 'x'.repeat(400), 'bomb/inside', 'nowhere/garden.yaml']) {
    const { code, err } = await loamtide('garden', 'export', name);
    expect([name, code, err]).toEqual([name, 2, expect.stringContaining('Nothing was written.')]);
  }
  for (const today of ['9998-06-01', '0001-01-01', '2027-02-29', '+275760-09-13']) {
    const { code, err } = await loamtide('plan', '--today', today);
    expect([today, code, err]).toEqual([today, 2, expect.stringContaining('from 1900-01-01 to 2200-12-31')]);
  }
}, 60_000);

test('the page of the garden file refuses them as well, and keeps nothing', async () => {
  const { send, sendFile, steward, reported } = await sampleApp();
  const before = (await steward.view('mill-row')).ledger.length;
  for (const [name, text] of Object.entries(REFUSED)) {
    const answer = await send('/gardens/mill-row/garden-file', { text });
    const body = await answer.text();
    // What is longer than a garden file may be is not read at all.
    const isLong = String(new URLSearchParams({ text })).length > 1024 * 1024;
    expect([name, answer.status]).toEqual([name, isLong ? 413 : 422]);
    expect([name, ...amissIn({ status: 422, body, isPage: true, location: undefined }, text)]).toEqual([name]);
  }
  const packed = gzipSync(Buffer.alloc(100 * 1024 * 1024));
  const answer = await sendFile('/bring-in', { name: 'garden.yaml.gz', content: new Uint8Array(packed) });
  expect(answer.status).toBe(422);
  expect(await answer.text()).toContain('longer than 1 MiB unpacked');
  expect((await steward.view('mill-row')).ledger.length).toBe(before);
  expect(reported).toEqual([]);
}, 120_000);
