import { expect, test } from 'vitest';
import { Recent } from '../../src/steward/long-work/recent.ts';

test('what was used longest ago is let go where there are too many; looking at a thing is using it', () => {
  const kept = new Recent<string, number>(2);
  kept.set('a', 1);
  kept.set('b', 2);
  expect(kept.get('a')).toBe(1);
  kept.set('c', 3);
  expect([kept.size, kept.get('a'), kept.get('b'), kept.get('c')]).toEqual([2, 1, undefined, 3]);
  kept.set('a', 4);
  kept.set('d', 5);
  expect([kept.size, kept.get('a'), kept.get('c'), kept.get('d')]).toEqual([2, 4, undefined, 5]);
  kept.delete('a');
  expect([kept.size, kept.get('a')]).toEqual([1, undefined]);
});
