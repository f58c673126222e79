/**
 * Heat units and the dates of heat sums against published and independently worked-out figures.
 */
import { describe, expect, it } from 'vitest';
import { airNorms } from '../../src/climate/air.ts';
import type { Climate } from '../../src/climate/climate.ts';
import { expectedAbove } from '../../src/climate/daily-spread.ts';
import { climateFromNormals } from '../../src/climate/from-normals.ts';
import { type HeatCount, type HeatTarget, heatOdds, heatRuns, heatUnits } from '../../src/climate/heat.ts';
import { quantileType7 } from '../../src/climate/quantiles.ts';
import { dayOfIndex, seasonIndex } from '../../src/climate/season.ts';
import { daysBetween } from '../../src/measures/days.ts';
import { celsius } from '../../src/measures/units.ts';
import { type RecordName, recordClimate, stationById, withoutSeasons } from '../climate/real-data.ts';

const PLAIN = 'mean-over-base';

describe('heat units of a day (McMaster & Wilhelm 1997, Table 1, agro:S12)', () => {
  it.each([
    [20, 10, 15, 15],
    [8, -2, 3, 4],
    [5, -5, 0, 2.5],
    [-2, -7, 0, 0],
    [10, -2, 4, 5],
  ])('maximum %d, minimum %d: %d by method 1, %d by method 2', (tmaxC, tminC, method1, method2) => {
    expect(heatUnits({ tminC, tmaxC }, { method: PLAIN, baseC: 0 })).toBe(method1);
    expect(heatUnits({ tminC, tmaxC }, { method: 'raised-to-base', baseC: 0 })).toBe(method2);
  });

  it('70/50 °F makes 10 °F units by the 50/86 rule (Iowa State, Agronomy 541, agro:S15)', () => {
    const count: HeatCount = { method: 'raised-to-base', baseC: celsius(50), upperC: celsius(86) };
    expect((heatUnits({ tminC: celsius(50), tmaxC: celsius(70) }, count) * 9) / 5).toBeCloseTo(10, 9);
  });
});

it('counts small grains as North Dakota does (phenology:P2; arithmetic on its table)', () => {
  const count: HeatCount = { method: 'small-grain', baseC: 0 };
  expect(heatUnits({ tminC: 10, tmaxC: 30 }, count, 150)).toBeCloseTo(15.55, 9);
  expect(heatUnits({ tminC: 10, tmaxC: 30 }, count, 300)).toBe(20);
  expect(heatUnits({ tminC: -4, tmaxC: 12 }, count, 0)).toBe(6);
});

it('expects the units of one scattered day (arithmetic on the formula, to the printed digit)', () => {
  expect(expectedAbove(7, 4.7, 4.4)).toBeCloseTo(3.455, 3);
  expect(expectedAbove(2, 4.7, 4.4)).toBeCloseTo(0.914, 3);
  expect(expectedAbove(12, 4.7, 4.4)).toBeCloseTo(7.705, 3);
});

/** Expected units from 1 January to 1 June, both included, at base 4.4 °C. */
function expectedTo1June(climate: Climate): number {
  const daySum = (target: number): HeatTarget => ({ method: PLAIN, baseC: 4.4, from: '2001-01-01', sum: target });
  let sum = 0;
  while ((heatOdds(climate, daySum(sum + 1)).medianDay ?? '9999') <= '2001-06-01') sum += 1;
  return sum;
}

describe('units from 1 January to 1 June, base 4.4 °C, 1981–2010', () => {
  // Worked out once apart from this program: daily 452 and 358; published normals with spread 453 and 362. Straight
  // lines between the middles of months are within 11 units of the smooth curve used there.
  it.each([
    ['milwaukee', 'USW00014839', 452, 453],
    ['bozeman', 'USC00241044', 358, 362],
  ] as const)('%s', (name, id, daily, expected) => {
    const { seasons } = recordClimate(name, 2010);
    const sums = seasons.map(({ tminC, tmaxC }) =>
      tminC.slice(0, 152).reduce<number>((sum, low, i) => {
        const high = tmaxC[i];
        const known = low !== undefined && high !== undefined;
        return sum + (known ? heatUnits({ tminC: low, tmaxC: high }, { method: PLAIN, baseC: 4.4 }) : 0);
      }, 0),
    );
    expect(Math.abs(sums.reduce((a, b) => a + b, 0) / 30 - daily)).toBeLessThan(1);
    const { tmaxC, tminC } = stationById(id).normals;
    const normals = climateFromNormals({
      latitude: 45,
      longitude: 0,
      highC: tmaxC,
      lowC: tminC,
      precipMm: [],
      frostOffsetDays: 0,
      tempOffsetC: 0,
    });
    expect(Math.abs(expectedTo1June(normals) - expected)).toBeLessThanOrEqual(11);
    // Without the spread the same course makes 60 to 90 units fewer: the term is not a trifle.
    const plain = airNorms(normals)
      .slice(0, 152)
      .reduce((sum, { meanC }) => sum + Math.max(0, meanC - 4.4), 0);
    expect(expectedTo1June(normals) - plain).toBeGreaterThan(60);
  });
});

describe('the day 450 units are reached (base 4.4 °C, from 1 January), year by year', () => {
  // Worked out once apart from this program, day by day, leap years included.
  it.each<[RecordName, Record<number, string>]>([
    ['milwaukee', { 2007: '05-25', 2008: '06-07', 2012: '05-15', 2018: '06-01', 2020: '06-04' }],
    ['bozeman', { 2010: '06-28', 2012: '06-05', 2015: '06-04', 2018: '06-09' }],
  ])('%s', (name, days) => {
    const climate = recordClimate(name, 2020);
    for (const [year, monthDay] of Object.entries(days)) {
      const season = climate.seasons.filter((each) => each.season === Number(year));
      const target = { method: PLAIN, baseC: 4.4, from: `${year}-01-01`, sum: 450 } as const;
      const [run] = heatRuns({ ...climate, seasons: season }, target);
      expect(dayOfIndex('01-01', Number(year), 1 + Number(run))).toBe(`${year}-${monthDay}`);
    }
  });
});

describe('dates reached over 1991–2020: one, five and nine years of ten, and their deviation', () => {
  // Worked out once apart from this program with type 7. A day either way: medians that fall between two days were
  // rounded otherwise there, and a missing day counted nothing. Its deviations divide by n, ours by n − 1.
  const rows: [string, number, Partial<HeatCount>, string, string, string][] = [
    ['01-01', 400, { baseC: 4.4 }, 'rye', '05-19 05-28 06-04 6.9', '05-30 06-07 06-18 8.6'],
    ['01-01', 450, { baseC: 4.4 }, 'rye', '05-24 06-01 06-08 6.6', '06-04 06-13 06-22 8.4'],
    ['01-01', 520, { baseC: 4.4 }, 'rye', '05-30 06-09 06-13 6.7', '06-09 06-19 06-29 7.9'],
    ['01-01', 480, { baseC: 4.4 }, 'wheat heading', '05-27 06-05 06-10 6.5', '06-06 06-15 06-26 8.2'],
    ['01-01', 350, { baseC: 5 }, 'red clover', '05-18 05-28 06-03 7.2', '05-28 06-05 06-17 8.7'],
    ['01-01', 450, { baseC: 5 }, 'red clover', '05-29 06-07 06-11 6.6', '06-07 06-17 06-27 8.0'],
    ['01-01', 500, { baseC: 4 }, 'vetch', '05-26 06-05 06-10 6.6', '06-05 06-13 06-25 8.4'],
    ['04-21', 792, { baseC: 0, method: 'small-grain' }, 'barley', '06-13 06-17 06-22 3.5', '06-21 06-25 07-01 3.9'],
    ['04-20', 830, { baseC: 0, upperC: 22.5 }, 'fava', '06-14 06-17 06-23 3.4', '06-22 06-28 07-03 4.3'],
    ['04-15', 350, { baseC: 5 }, 'mustard', '05-29 06-01 06-07 4.7', '06-04 06-13 06-21 6.9'],
    ['06-01', 400, { baseC: 7 }, 'buckwheat', '06-29 07-03 07-06 3.0', '07-07 07-14 07-20 4.9'],
    ['07-01', 400, { baseC: 7 }, 'buckwheat', '07-23 07-26 07-31 2.9', '07-28 08-01 08-04 4.0'],
  ];
  const climates = { milwaukee: recordClimate('milwaukee', 2020), bozeman: recordClimate('bozeman', 2020) };

  it.each(
    rows.flatMap(([from, sum, count, what, ...tables]) =>
      (['milwaukee', 'bozeman'] as const).map((name, i) => ({ name, from, sum, count, what, table: tables[i] ?? '' })),
    ),
  )('$what $sum from $from at $name', ({ name, from, sum, count, table }) => {
    const target = { method: PLAIN, baseC: 0, from: `2001-${from}`, sum, ...count } as const;
    const runs = heatRuns(climates[name], target).map(Number);
    const sorted = runs.sort((a, b) => a - b);
    const start = seasonIndex('01-01', target.from);
    const [early, median, late, deviation] = table.split(' ');
    for (const [share, expected] of [
      [0.1, early],
      [0.5, median],
      [0.9, late],
    ] as const) {
      const found = dayOfIndex('01-01', 2001, start + quantileType7(sorted, share));
      expect(Math.abs(daysBetween(`2001-${expected}`, found))).toBeLessThanOrEqual(1);
    }
    const { spreadDays } = heatOdds(climates[name], target);
    expect(Math.abs(spreadDays * Math.sqrt(1 - 1 / runs.length) - Number(deviation))).toBeLessThan(0.15);
  });

  it('are met by monthly means within five days, and not later from midwinter', () => {
    // Half the standard deviation of a year; the smooth course lacks the cold springs that hold a median back.
    for (const [from, sum, count] of rows)
      for (const name of ['milwaukee', 'bozeman'] as const) {
        const target = { method: PLAIN, baseC: 0, from: `2001-${from}`, sum, ...count } as const;
        const counted = heatOdds(climates[name], target).medianDay ?? '';
        const expected = heatOdds(withoutSeasons(climates[name]), target).medianDay ?? '';
        expect(Math.abs(daysBetween(counted, expected))).toBeLessThanOrEqual(5);
        if (from === '01-01') expect(daysBetween(counted, expected)).toBeLessThanOrEqual(0);
      }
  });
});
