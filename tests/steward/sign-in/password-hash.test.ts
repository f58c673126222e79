import { expect, test } from 'vitest';
import { COST, isOutdated, isPassword, passwordHash } from '../../../src/steward/sign-in/password-hash.ts';
import { CHEAP } from './cheap-cost.ts';

const KEPT = 'four words of mine';

test('costs what OWASP asks: 128 · N · r octets, worked over p times, as much as N = 2^17, r = 8, p = 1 or more than two thirds of it', () => {
  const work = (2 ** COST.logN * COST.r * COST.p) / (2 ** 17 * 8);
  expect(work).toBeGreaterThan(2 / 3);
  expect(128 * 2 ** COST.logN * COST.r).toBe(32 * 1024 * 1024);
});

test('is kept with its cost and a salt of its own, and never twice the same', async () => {
  const [one, other] = [await passwordHash(KEPT, CHEAP), await passwordHash(KEPT, CHEAP)];
  expect(one).toMatch(/^scrypt\$ln=4,r=8,p=1\$[\w-]{22}\$[\w-]{43}$/);
  expect(one).not.toBe(other);
  expect([await isPassword(KEPT, one), await isPassword(KEPT, other)]).toEqual([true, true]);
  expect([await isPassword('four words of mine ', one), await isPassword('', one)]).toEqual([false, false]);
});

test('is read at whatever cost it was made, and known to be outdated at another than today’s', async () => {
  expect(isOutdated(await passwordHash(KEPT, CHEAP), COST)).toBe(true);
  const today = await passwordHash(KEPT, COST);
  expect([isOutdated(today, COST), await isPassword(KEPT, today)]).toEqual([false, true]);
});

test.each([
  ['nothing', ''],
  ['the password itself', KEPT],
  ['another function', '$2b$10$abcdefghijklmnopqrstuv'],
  ['more memory than is ever given', `scrypt$ln=30,r=8,p=1$${'A'.repeat(22)}$${'A'.repeat(43)}`],
])('%s is no hash, and the mend is said without it', async (_, kept) => {
  await expect(isPassword(KEPT, kept)).rejects.toThrow('Set it anew: loamtide password');
  await expect(isPassword(KEPT, kept)).rejects.not.toThrow(KEPT);
});
