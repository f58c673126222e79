import { expect, it } from 'vitest';
import { readableIn } from '../../src/measures/quantity.ts';
import { firstFreezeOf } from '../../src/practices/freeze-words.ts';

it.each([
  [32, '32 °F', '0 °C'],
  [28, '28 °F', '-2.2 °C'],
  [24, '24 °F', '-4.4 °C'],
] as const)('a first freeze of %i °F is named by its cold, in either unit', (limitF, us, metric) => {
  const named = (units: 'us' | 'metric') => readableIn(units, firstFreezeOf(limitF)).replace(/[−–]/, '-');
  expect(named('us').replace(/\s/g, ' ')).toBe(`the first freeze of ${us}`);
  expect(Number.parseFloat(named('metric').replace('the first freeze of ', ''))).toBeCloseTo(
    Number.parseFloat(metric),
    0,
  );
});
