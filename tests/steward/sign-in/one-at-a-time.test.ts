import { setImmediate as turn } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { OneAtATime } from '../../../src/steward/sign-in/one-at-a-time.ts';

test('what is asked for at once is done one after the other, and not at all where too many wait', async () => {
  const row = new OneAtATime();
  let [inside, most] = [0, 0];
  const work = async () => {
    inside += 1;
    most = Math.max(most, inside);
    await turn();
    inside -= 1;
    return 'done';
  };
  const ends = await Promise.all(Array.from({ length: 40 }, () => row.do(work)));
  expect(most).toBe(1);
  expect([ends.filter((end) => end === 'done').length, ends.filter((end) => end === undefined).length]).toEqual([
    9, 31,
  ]);
  expect(await row.do(work)).toBe('done');
});

test('what fails holds up nobody', async () => {
  const row = new OneAtATime();
  const failed = row.do(() => Promise.reject(new Error('It broke.')));
  const next = row.do(async () => 'done');
  await expect(failed).rejects.toThrow('It broke.');
  expect(await next).toBe('done');
});
