import { join } from 'node:path';
import { expect, test } from 'vitest';
import { signerFor } from '../../../src/steward/answers/signer.ts';
import { tempFolder } from '../../store/temp-folder.ts';
import { emptyHousehold, household, MORNING } from '../household.ts';

const SAID = Buffer.from('topdress the north bed');

test("a garden's signer knows its own mark, and knows it again after a restart", async () => {
  const file = join(tempFolder(), 'loamtide.db');
  const first = await household(undefined, undefined, file);
  const mark = (await signerFor(first, first.garden)).sign('answer', SAID);
  const second = await emptyHousehold(MORNING, file);
  expect((await signerFor(second, first.garden)).signed('answer', SAID, mark)).toBe(true);
});

test('a mark made for one use is worth nothing for the other, nor on other words, nor cut short', async () => {
  const room = await household();
  const signer = await signerFor(room, room.garden);
  const mark = signer.sign('answer', SAID);
  expect(signer.signed('stop', SAID, mark)).toBe(false);
  expect(signer.signed('answer', Buffer.from('topdress the south bed'), mark)).toBe(false);
  expect(signer.signed('answer', SAID, mark.subarray(0, 31))).toBe(false);
  expect(signer.signed('answer', SAID, Buffer.alloc(0))).toBe(false);
});

test('the key is made on first need, once though many ask together', async () => {
  const room = await household();
  expect(await room.store.signingKey(room.garden)).toBeUndefined();
  const signers = await Promise.all([1, 2, 3].map(() => signerFor(room, room.garden)));
  const marks = new Set(signers.map((signer) => signer.sign('stop', SAID).toString('hex')));
  expect(marks.size).toBe(1);
  // RFC 2104, 3: a key shorter than the hash's output weakens the mark.
  expect(Buffer.from((await room.store.signingKey(room.garden)) ?? '', 'base64url').length).toBe(32);
});

test('each household has a key of its own', async () => {
  const [one, other] = [await household(), await household()];
  const mark = (await signerFor(one, one.garden)).sign('answer', SAID);
  expect((await signerFor(other, other.garden)).signed('answer', SAID, mark)).toBe(false);
});

test('there is no key for a garden that is not there', async () => {
  const room = await emptyHousehold();
  await expect(signerFor(room, 'no-such-garden')).rejects.toThrow(/FOREIGN KEY/);
});
