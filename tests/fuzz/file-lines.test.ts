/**
 * A long file read as it comes: nothing of it is held but some lines, and the days.
 */
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { weatherReader } from '../../src/garden/weather-file.ts';
import { LINES_AT_ONCE } from '../../src/garden/weather-rows.ts';
import { linesOfStream } from '../../src/steward/files/file-lines.ts';
import { inventedRecord } from '../cli/invented-record.ts';

const RECORD = inventedRecord('2017-01-01', '2026-12-31');

/** Bytes in pieces of some length, each made when it is asked for. */
async function* pieces(bytes: Uint8Array, length: number, asked = { for: 0 }) {
  for (let at = 0; at < bytes.length; at += length) {
    asked.for = at;
    yield bytes.subarray(at, at + length);
  }
}

async function read(bytes: Uint8Array, length: number) {
  const reader = weatherReader('record');
  let most = 0;
  const unread = await linesOfStream(pieces(bytes, length), (lines) => {
    most = Math.max(most, lines.length);
    return reader.take(lines);
  });
  return { unread, most, ...reader.end() };
}

test.each([1, 7, 64, 65_536])('a record is the same in pieces of %i octets, packed or not', async (length) => {
  const short = RECORD.split('\n')
    .slice(0, length === 1 ? 100 : undefined)
    .join('\n');
  const expected = (await read(Buffer.from(short), short.length)).rows;
  expect(expected.length).toBeGreaterThan(60);
  for (const bytes of [Buffer.from(short), gzipSync(short), Buffer.from(short.replaceAll('\n', '\r\n'))]) {
    const { rows, problems, unread } = await read(bytes, length);
    expect([unread, problems.length, rows.length]).toEqual([undefined, 0, expected.length]);
    expect(rows).toEqual(expected);
  }
});

test('a file of two million letters is never held whole, and comes to its days', async () => {
  const [header = '', ...rows] = RECORD.trim().split('\n');
  const bytes = Buffer.from(`${header}\n${`${rows.join('\n')}\n`.repeat(16)}`);
  expect(bytes.length).toBeGreaterThan(1_500_000);
  const found = await read(bytes, 16_384);
  expect(found.most).toBeLessThan(LINES_AT_ONCE + 1000);
  expect([found.rows.length, found.duplicates]).toEqual([rows.length, 15 * rows.length]);
});

test('what cannot be used is not read to its end', async () => {
  const two = Buffer.from(
    `USC00000001,20270101,TMIN,10,,,S\nUSC00000002,20270101,TMIN,10,,,S\n${'x\n'.repeat(500_000)}`,
  );
  const asked = { for: 0 };
  const reader = weatherReader('record');
  await linesOfStream(pieces(two, 16_384, asked), (lines) => reader.take(lines));
  expect(reader.end().problems).toHaveLength(1);
  expect(asked.for).toBeLessThan(200_000);
});

test('a line without an end, text of another code and what is not gzip are refused', async () => {
  const never = (bytes: Uint8Array) => linesOfStream(pieces(bytes, 16_384), () => true);
  expect((await never(Buffer.alloc(1_000_000, 'x')))?.what).toBe('has a line of more than 10000 characters.');
  expect((await never(gzipSync(Buffer.alloc(5_000_000))))?.what).toBe('has a line of more than 10000 characters.');
  expect((await never(Buffer.from([0x64, 0xff, 0xfe])))?.what).toBe('is not UTF-8 text.');
  expect((await never(Buffer.from([0x1f, 0x8b, 8, 1, 2, 3])))?.what).toBe('cannot be unpacked.');
  expect(await never(Buffer.alloc(0))).toBeUndefined();
});
