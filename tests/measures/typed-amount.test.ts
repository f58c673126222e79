import { expect, test } from 'vitest';
import { readArea, readDepthMm, readHeap, readLength, readSides } from '../../src/measures/typed-amount.ts';

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

test.each([
  ['200L', { litres: 200, units: 'metric' }],
  ['12,5 litres', { litres: 12.5, units: 'metric' }],
  ['0.3 m3', { litres: 300, units: 'metric' }],
  ['1 yd3', { litres: 764.554857984, units: 'us' }],
  ['2 cu ft', { litres: 56.633693184, units: 'us' }],
  ['5gal', { litres: 18.92705892, units: 'us' }],
  ['12kg', { kg: 12, units: 'metric' }],
  ['10 lb.', { kg: 4.5359237, units: 'us' }],
])('"%s" is a heap', (text, heap) => {
  expect(readHeap(text)).toEqual(heap);
});

test.each(['', '200', 'L', '-3 L', '0 L', 'two L', '3 buckets', '1e3 L', '999999 L', '3 4 L'])(
  '"%s" is no heap',
  (text) => {
    expect(readHeap(text)).toBeUndefined();
  },
);

test('a comma that may stand between thousands is read as no amount of any kind', () => {
  const read = [readDepthMm('1,100 mm'), readHeap('1,200 L'), readLength('1,250 cm'), readArea('1,100 sq ft')];
  expect([...read, readSides('1,000x1,000x1,000cm')]).toEqual([...Array(5)]);
  expect(readHeap('1,25 m3')).toEqual({ litres: 1250, units: 'metric' });
});

test('a bin is read by its three sides', () => {
  expect(readSides('1x1x0.9m')).toEqual({ lengthM: 1, widthM: 1, heightM: 0.9 });
  expect(readSides('3 x 3 × 3 ft')?.heightM).toBeCloseTo(0.9144, 6);
  expect(readSides('90x90x90cm')?.lengthM).toBeCloseTo(0.9, 6);
  for (const text of ['3x3x3', '3 ft x 3 ft x 3 ft', "3' by 3' by 3'", '3 by 3 ft × 3', '36 in x 3 x 3 ft'])
    expect(
      Object.values(readSides(text, 'ft') ?? {}).map((side) => Number(side.toFixed(4))),
      text,
    ).toEqual(Array(3).fill(0.9144));
  expect(readSides('1 x 1 x 0.8', 'm')).toEqual({ lengthM: 1, widthM: 1, heightM: 0.8 });
  for (const none of ['1x1m', '1x1x1', '0x1x1m', '100x1x1m', 'bin']) expect(readSides(none), none).toBeUndefined();
});

test.each([
  ['2.4m', { value: 2.4, units: 'metric' }],
  ['240 cm', { value: 2.4, units: 'metric' }],
  ['1,2 m', { value: 1.2, units: 'metric' }],
  ['8ft', { value: 2.4384, units: 'us' }],
  ["4'", { value: 1.2192, units: 'us' }],
  ['12 inches', { value: 0.3048, units: 'us' }],
])('"%s" is a length', (text, length) => {
  expect(readLength(text)).toEqual(length);
});

test.each(['8', '', 'long', '0 m', '-2 m', '2 miles', '1e3m'])('"%s" is no length', (text) => {
  expect(readLength(text)).toBeUndefined();
});

test.each([
  ['2m2', { value: 2, units: 'metric' }],
  ['2,5 m²', { value: 2.5, units: 'metric' }],
  ['20 sq ft', { value: 1.8580608, units: 'us' }],
  ['20ft2', { value: 1.8580608, units: 'us' }],
  ['0', { value: 0, units: 'metric' }],
])('"%s" is an area', (text, area) => {
  expect(readArea(text)).toEqual(area);
});

test.each(['2', 'all', '2 m', '-1 m2'])('"%s" is no area', (text) => {
  expect(readArea(text)).toBeUndefined();
});
