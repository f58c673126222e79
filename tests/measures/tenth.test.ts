import { expect, it } from 'vitest';
import { tenth } from '../../src/measures/tenth.ts';

it('a figure to the nearest tenth', () => {
  expect([tenth(2.449), tenth(2.45), tenth(-3.26), tenth(50.500_000_000_000_01)]).toEqual([2.4, 2.5, -3.3, 50.5]);
});

it('a little below nothing is nothing, with no minus before it', () => {
  expect(Object.is(tenth(-0.04), 0)).toBe(true);
});
