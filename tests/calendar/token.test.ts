import { expect, it } from 'vitest';
import { newFeedToken } from '../../src/calendar/token.ts';

it('a token is 256 bits in 43 characters that an address can hold as they are', () => {
  const token = newFeedToken();
  expect(token).toMatch(/^[A-Za-z0-9_-]{43}$/);
  expect(Buffer.from(token, 'base64url')).toHaveLength(32);
});

it('no two tokens are alike, and each of their bits is sometimes set and sometimes not', () => {
  const tokens = Array.from({ length: 200 }, newFeedToken);
  expect(new Set(tokens).size).toBe(200);
  const bits = tokens.map((token) => BigInt(`0x${Buffer.from(token, 'base64url').toString('hex')}`));
  expect(bits.reduce((all, value) => all | value, 0n)).toBe(2n ** 256n - 1n);
  expect(bits.reduce((common, value) => common & value)).toBe(0n);
});
