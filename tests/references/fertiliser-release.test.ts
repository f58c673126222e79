import { expect, test } from 'vitest';
import { fertilisers, releasedShare } from '../../src/handbook/fertilisers.ts';

const share = (id: string): number => releasedShare(fertilisers.find((each) => each.id === id) ?? { nitrogen: 0 });

// Extension tables of what fresh organic fertilisers release in a first season, from memory: blood and feather meal 70 to
// 80 percent, fish meal 70 to 75, cottonseed meal about 60, alfalfa meal 15 to 30.
test.each([
  ['blood_meal', 0.7, 0.8],
  ['feather_meal', 0.7, 0.8],
  ['fish_meal', 0.7, 0.75],
  ['alfalfa_meal', 0.15, 0.3],
])('%s releases in its first season what the tables say', (id, low, high) => {
  expect(share(id)).toBeGreaterThanOrEqual(low);
  expect(share(id)).toBeLessThanOrEqual(high);
});

test('cottonseed meal, at the bend of the line, is put 15 percent of all above the table’s 60', () => {
  expect(share('cottonseed_meal') - 0.6).toBeCloseTo(0.15, 6);
});
