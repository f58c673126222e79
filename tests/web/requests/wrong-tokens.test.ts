import { describe, expect, test } from 'vitest';
import { WrongTokens } from '../../../src/web/requests/wrong-tokens.ts';

function counted() {
  const clock = { nowMs: 0 };
  return { clock, wrong: new WrongTokens(() => clock.nowMs) };
}

describe('wrong tokens', () => {
  test('are let pass thirty times in ten minutes, then the rest of them has to be waited out', () => {
    const { clock, wrong } = counted();
    for (let tried = 0; tried < 30; tried += 1) expect(wrong.count('::1')).toBeUndefined();
    expect(wrong.count('::1')).toBe(600);
    clock.nowMs = 599_001;
    expect(wrong.count('::1')).toBe(1);
    clock.nowMs = 600_000;
    expect(wrong.count('::1')).toBeUndefined();
  });

  test('are counted for each client alone', () => {
    const { wrong } = counted();
    for (let tried = 0; tried < 31; tried += 1) wrong.count('192.0.2.1');
    expect(wrong.count('192.0.2.1')).toBeDefined();
    expect(wrong.count('192.0.2.2')).toBeUndefined();
  });

  test('of more clients than are remembered push out the one seen first', () => {
    const { wrong } = counted();
    for (let tried = 0; tried < 31; tried += 1) wrong.count('first');
    for (let client = 0; client < 999; client += 1) wrong.count(`client ${client}`);
    expect([wrong.remembered, wrong.count('first')]).toEqual([1_000, 600]);
    wrong.count('one more');
    expect([wrong.remembered, wrong.count('first')]).toEqual([1_000, undefined]);
  });
});
