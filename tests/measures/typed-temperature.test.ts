import { expect, test } from 'vitest';
import { readTemperature } from '../../src/measures/typed-temperature.ts';

test.each([
  ['-1C', -1],
  ['30F', -10 / 9],
  ['32 °F', 0],
  ['\u22121,5 c', -1.5],
  ['+2C', 2],
  ['-40 F', -40],
])('"%s" with its unit is %f °C', (text, tempC) => {
  expect(readTemperature(text)).toBeCloseTo(tempC, 10);
});

test('a number alone is in the reader’s unit, and a written unit goes before it', () => {
  expect(readTemperature('28', 'F')).toBeCloseTo(-20 / 9, 10);
  expect(readTemperature('-2', 'C')).toBe(-2);
  expect(readTemperature('-2 C', 'F')).toBe(-2);
});

test('without a unit to read it in, a number alone is nothing', () => {
  expect(readTemperature('28')).toBeUndefined();
});

test.each(['', 'cold', '1e3C', '--1C', '12345C', '-61C', '41C', '105F', 'NaNC', '1 2C'])(
  '"%s" is no night’s low',
  (text) => expect(readTemperature(text)).toBeUndefined(),
);
