import { expect, test } from 'vitest';
import { monthOdds, yearOdds } from '../../src/digest/year-odds.ts';
import { bed, frostDates, garden, milwaukee } from '../practices/gardens.ts';

const span = { from: '2027-09-01', to: '2029-02-28' };
const twoSoils = garden({ beds: [bed('a'), bed('b', { soilTexture: 'clay' }), bed('c')] });

test('every soil of the garden has its days, that of most beds first', () => {
  const { soils } = yearOdds({ garden: twoSoils, climate: milwaukee }, span);
  expect(soils.map(({ soil }) => soil)).toEqual(['loam, raised beds', 'clay, raised beds']);
  for (const { days } of soils) expect(days).toHaveLength(547);
});

test('months are the means of the days that are drawn', () => {
  const odds = yearOdds({ garden: twoSoils, climate: milwaukee }, span);
  const months = monthOdds(odds, span);
  expect(months.map(({ from }) => from).slice(0, 2)).toEqual(['2027-09-01', '2027-10-01']);
  expect(months).toHaveLength(18);
  const leap = odds.freezes[32].filter(({ day }) => day.startsWith('2028-02'));
  expect(leap).toHaveLength(29);
  const february = months.find(({ from }) => from === '2028-02-01');
  expect(february?.freezes[32]).toBeCloseTo(leap.reduce((sum, { share }) => sum + share, 0) / 29);
  const clay = odds.soils[1]?.days.filter(({ day }) => day.startsWith('2028-04')) ?? [];
  const april = months.find(({ from }) => from === '2028-04-01');
  expect(april?.fit[1]).toBeCloseTo(clay.reduce((sum, { share }) => sum + share, 0) / 30);
  // Milwaukee: hard winters, no frost in July; clay is worked later than loam.
  expect(february?.freezes[32]).toBeGreaterThan(0.8);
  expect(months.find(({ from }) => from === '2028-07-01')?.freezes[32]).toBe(0);
  expect(april?.fit[1]).toBeLessThan(april?.fit[0] ?? 0);
});

test('a climate of two freeze dates knows neither', () => {
  const odds = yearOdds({ garden: twoSoils, climate: frostDates('05-06', '10-04') }, span);
  expect([odds.freezes[32], odds.freezes[28], odds.soils.map(({ days }) => days.length)]).toEqual([[], [], [0, 0]]);
  expect(monthOdds(odds, span)[0]?.fit).toEqual([undefined, undefined]);
});
