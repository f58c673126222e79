import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../../src/garden/garden.ts';
import { seedToBuy } from '../../../../src/practices/cover-cropping/fit/seed-to-buy.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, inputOf } from '../../gardens.ts';

/** Median freezes 10 May and 1 October: oats are sown 6 August to 1 September, rye 20 August to 1 October. */
const climate = frostDates('05-10', '10-01');
const north = (given: Partial<Garden>) => garden({ beds: [bed('a'), bed('b'), bed('c')], ...given });
const listed = (of: Garden) => seedToBuy(inputOf(of, climate));
const grams = (of: Garden, key: string) =>
  draft(draftsIn(of, climate), key).supplies.flatMap(({ amount }) => (amount?.unit === 'g' ? [amount.value] : []));

describe('the seed to buy', () => {
  it.each([
    ['that lies in its window', cover('oats', '2027-08-20'), {}],
    ['that is moved into its window', cover('oats', '2027-10-10'), {}],
    ['that is pinned late', cover('cereal_rye', '2027-09-01'), { pins: { 'cover-sow/stand:s': '2027-09-28' } }],
  ])('has the day and the weight of the order, and of the sowing, for a day %s', (_, stand, more) => {
    const of = north({ stands: [stand], ...more });
    const [seed, ...others] = listed(of);
    const order = draft(draftsIn(of, climate), 'cover-order/stand:s');
    expect(others).toEqual([]);
    expect(seed?.by).toBe(order.window.latest);
    expect([seed?.grams]).toEqual(grams(of, 'cover-order/stand:s'));
    expect([seed?.grams]).toEqual(grams(of, 'cover-sow/stand:s'));
  });

  it('is more for rye that is pinned to the end of its time', () => {
    const of = north({ stands: [cover('cereal_rye', '2027-08-25')] });
    const late = { ...of, pins: { 'cover-sow/stand:s': '2027-09-28' } };
    expect(listed(late)[0]?.grams).toBeGreaterThan(listed(of)[0]?.grams ?? 0);
  });

  it.each([
    ['skipped', { skipped: { 'cover-sow/stand:s': '2027-05-01' } }],
    ['at hand', { skipped: { 'cover-order/stand:s': '2027-05-01' } }],
  ])('is none for a cover that is %s', (_, more) => {
    expect(listed(north({ stands: [cover('oats', '2027-08-20')], ...more }))).toEqual([]);
  });

  it('is none for a cover that cannot be sown on its day', () => {
    expect(listed(north({ stands: [cover('cereal_rye', '2027-05-20')] }))).toEqual([]);
  });

  it('is bought together for one autumn, and apart for the next', () => {
    const stands = [
      cover('oats', '2027-08-10', { id: 'one' }),
      cover('oats', '2027-08-25', { id: 'two', bedId: 'b' }),
      cover('oats', '2028-08-20', { id: 'three', bedId: 'c' }),
    ];
    expect(listed(north({ stands })).map(({ by, beds }) => [by.slice(0, 4), beds.length])).toEqual([
      ['2027', 2],
      ['2028', 1],
    ]);
  });

  it('is apart for spring and autumn of one year', () => {
    const stands = [
      cover('oats', '2028-04-20', { id: 'spring' }),
      cover('oats', '2028-08-20', { id: 'autumn', bedId: 'b' }),
    ];
    expect(listed(north({ stands }))).toHaveLength(2);
  });

  it('is reckoned the same half a year later in the south', () => {
    const south = inputOf(
      garden({ place: { latitude: -43 }, startedOn: '2027-10-01', stands: [cover('oats', '2028-02-20')] }),
      frostDates('11-10', '04-01', -43),
    );
    expect(seedToBuy(south)).toMatchObject([{ coverId: 'oats', by: '2028-02-06' }]);
  });
});
