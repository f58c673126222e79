import { expect, it } from 'vitest';
import { lastTest, testsOf } from '../../src/practices/soil-test.ts';

const on = '2027-11-09';
const poor = { on, phosphorusPpm: 3 };
const rich = { on, phosphorusPpm: 15 };

it('of two tests of a day the richer soil speaks, whichever was written first', () => {
  for (const soilTests of [
    [poor, rich],
    [rich, poor],
  ]) {
    expect(lastTest({ soilTests }, 'a', ({ phosphorusPpm }) => phosphorusPpm)).toBe(15);
  }
});

it('the newest test comes first, however poor', () => {
  const soilTests = [rich, { ...poor, on: '2027-11-10' }];
  expect(testsOf({ soilTests }, 'a').map(({ phosphorusPpm }) => phosphorusPpm)).toEqual([3, 15]);
});

it('a bed’s own tests go before the garden’s', () => {
  const soilTests = [rich, { ...poor, on: '2024-10-01', bedId: 'a' }];
  expect(lastTest({ soilTests }, 'a', ({ phosphorusPpm }) => phosphorusPpm)).toBe(3);
});
