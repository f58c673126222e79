import { getEventListeners } from 'node:events';
import { expect, test } from 'vitest';
import { UnderWay } from '../../../src/steward/post/under-way.ts';

/** A work that lasts until it is broken off, and a moment more. */
async function endless(signal: AbortSignal): Promise<string> {
  if (!signal.aborted) await new Promise((resolve) => signal.addEventListener('abort', resolve));
  await new Promise((resolve) => setTimeout(resolve, 10));
  return 'broken off';
}

test('a stop breaks off every work and waits for its end', async () => {
  const underWay = new UnderWay();
  const ended: string[] = [];
  const works = [1, 2].map(async () => void ended.push(await underWay.run(endless)));
  await underWay.stop();
  await Promise.all(works);
  expect(ended).toEqual(['broken off', 'broken off']);
});

test('what begins after the stop is broken off from the start', async () => {
  const underWay = new UnderWay();
  await underWay.stop();
  expect(await underWay.run(async ({ aborted }) => aborted)).toBe(true);
});

test('a signal breaks off its own work alone, and keeps nothing of it', async () => {
  const underWay = new UnderWay();
  const [one, other] = [new AbortController(), new AbortController()];
  const first = underWay.run(endless, one.signal);
  let isOtherDone = false;
  const second = underWay.run(endless, other.signal).finally(() => (isOtherDone = true));
  one.abort();
  expect(await first).toBe('broken off');
  expect(isOtherDone).toBe(false);
  other.abort();
  await second;
  expect([one, other].flatMap(({ signal }) => getEventListeners(signal, 'abort'))).toEqual([]);
});

test('a work that fails is told to whoever asked for it, and does not hold up the stop', async () => {
  const underWay = new UnderWay();
  const failing = underWay.run(async (signal) => {
    await endless(signal);
    throw new Error('It failed.');
  });
  const told = expect(failing).rejects.toThrow('It failed.');
  await underWay.stop();
  await told;
});
