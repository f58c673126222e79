import { expect, test } from 'vitest';
import { freezeNights } from '../../src/climate/freeze-nights.ts';
import { climateFromNormals } from '../../src/climate/from-normals.ts';
import { NO_OFFSETS, PLACES, recordClimate, recordRows } from '../climate/real-data.ts';

const year = { from: '2027-01-01', to: '2027-12-31' };

test.each([
  ['milwaukee', 32, '04-24'],
  ['milwaukee', 28, '11-05'],
  ['bozeman', 32, '09-15'],
] as const)('%s: nights of %i °F about %s are as many as a plain count of its record', (name, limitF, monthDay) => {
  // NCEI daily records (tests/references/data), 1991-2020, whole °F; counted here with no reading of the project's.
  const nights = recordRows(name).filter(({ day, tminC }) => {
    const about = Math.abs(Date.parse(`2001-${day.slice(5)}`) - Date.parse(`2001-${monthDay}`)) / 86_400_000;
    return day >= '1991' && day < '2021' && about <= 3 && tminC !== undefined;
  });
  const frozen = nights.filter(({ tminC = 0 }) => Math.round(tminC * 1.8 + 32) <= limitF).length;
  const [told] = freezeNights(recordClimate(name, 2020), limitF, { from: `2027-${monthDay}`, to: `2027-${monthDay}` });
  expect(frozen).toBeGreaterThan(5);
  expect(told?.share).toBeCloseTo(frozen / nights.length, 3);
});

test.each(['milwaukee', 'bozeman'] as const)(
  '%s: monthly means are three nights of a hundred off on average, thirteen at worst',
  (name) => {
    const record = recordClimate(name, 2020);
    const { tmaxC, tminC } = record.normals;
    const means = climateFromNormals({
      ...PLACES[name],
      ...NO_OFFSETS,
      highC: tmaxC,
      lowC: tminC,
      precipMm: Array(12).fill(50),
    });
    for (const limitF of [32, 28] as const) {
      const counted = freezeNights(record, limitF, year);
      const off = freezeNights(means, limitF, year).map(({ share }, i) => Math.abs(share - (counted[i]?.share ?? 0)));
      const mean = off.reduce((sum, one) => sum + one, 0) / off.length;
      expect(mean).toBeLessThan(0.03);
      expect(Math.max(...off)).toBeLessThan(0.13);
    }
  },
);
