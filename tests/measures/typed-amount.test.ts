import { expect, test } from 'vitest';
import { readDepthMm } from '../../src/measures/typed-amount.ts';

test.each([
  ['15cm', 150],
  ['15 CM', 150],
  ['6in', 152.4],
  ['6"', 152.4],
  ['1 inch', 25.4],
  ['2 inches', 50.8],
  ['12mm', 12],
  ['0,5 mm', 0.5],
  ['.25 in', 6.35],
  ['0.3m', 300],
  ['+4 mm', 4],
])('"%s" with its unit is %f mm', (text, depthMm) => {
  expect(readDepthMm(text)).toBe(depthMm);
});

test('a number alone is in the unit of its field, and a written unit goes before it', () => {
  expect(readDepthMm('6', 'in')).toBe(152.4);
  expect(readDepthMm('15', 'cm')).toBe(150);
  expect(readDepthMm('15 mm', 'in')).toBe(15);
  expect(readDepthMm('15')).toBeUndefined();
});

test.each(['', 'deep', '-1 cm', '1e3mm', '1 2 cm', '123456 mm', 'cm', '5 ft'])('"%s" is no depth', (text) => {
  expect(readDepthMm(text, 'cm')).toBeUndefined();
});
