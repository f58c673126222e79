import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepPosted } from '../../src/cli/serving/keep-posted.ts';
import type { SendAsked } from '../../src/steward/doings/mail-doings.ts';

beforeEach(() => void vi.useFakeTimers({ now: new Date('2027-04-25T22:58:30.000Z') }));
afterEach(() => void vi.useRealTimers());

/** A post that notes when it is asked, each round lasting as long as one likes. */
function post({ lastsMs = 0, fails = false } = {}) {
  const asked: string[] = [];
  const faults: unknown[] = [];
  const rounds: SendAsked[] = [];
  const sendDue = async (round: SendAsked = {}) => {
    asked.push(new Date().toISOString().slice(14, 19));
    rounds.push(round);
    await new Promise<void>((resolve) => {
      setTimeout(resolve, lastsMs);
      round.signal?.addEventListener('abort', () => resolve());
    });
    if (fails) throw new Error('It failed.');
    return [];
  };
  const stop = keepPosted({ sendDue }, { done: () => undefined, failed: (fault) => void faults.push(fault) });
  return { asked, faults, rounds, stop };
}

describe('lists are looked for', () => {
  test('at the start and on every minute, and no more after the stop', async () => {
    const { asked, stop } = post();
    await vi.advanceTimersByTimeAsync(3 * 60_000);
    await stop();
    await vi.advanceTimersByTimeAsync(3 * 60_000);
    expect(asked).toEqual(['58:30', '59:00', '00:00', '01:00']);
  });

  test('at the start also where they wait for their next try: the settings may have been mended', async () => {
    const { rounds, stop } = post();
    await vi.advanceTimersByTimeAsync(60_000);
    await stop();
    expect(rounds.map(({ atOnce }) => atOnce)).toEqual([true, false]);
  });

  test('never twice at once: a round that lasts holds up the next', async () => {
    const { asked, stop } = post({ lastsMs: 150_000 });
    await vi.advanceTimersByTimeAsync(149_000);
    expect(asked).toEqual(['58:30']);
    await vi.advanceTimersByTimeAsync(2_000);
    expect(asked).toEqual(['58:30', '01:00']);
    const stopped = stop();
    await vi.advanceTimersByTimeAsync(10_000);
    await stopped;
  });

  test('again a minute after a round that failed, which is told', async () => {
    const { asked, faults, stop } = post({ fails: true });
    await vi.advanceTimersByTimeAsync(31_000);
    await stop();
    expect([asked, faults]).toEqual([
      ['58:30', '59:00'],
      [new Error('It failed.'), new Error('It failed.')],
    ]);
  });
});

describe('a stop', () => {
  test('waits for the list under way', async () => {
    const { rounds, stop } = post({ lastsMs: 5_000 });
    await vi.advanceTimersByTimeAsync(0);
    const stopped = stop();
    await vi.advanceTimersByTimeAsync(5_000);
    await stopped;
    expect(rounds[0]?.signal?.aborted).toBe(false);
  });

  test('breaks it off after seven seconds', async () => {
    const { rounds, stop } = post({ lastsMs: 600_000 });
    await vi.advanceTimersByTimeAsync(0);
    const stopped = stop();
    await vi.advanceTimersByTimeAsync(6_999);
    expect(rounds[0]?.signal?.aborted).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    await stopped;
    expect(rounds[0]?.signal?.aborted).toBe(true);
  });
});
