import { describe, expect, it } from 'vitest';
import { soilTempNormC, soilTempSeries, soilWarmOdds, warmIndices } from '../../src/climate/soil-temperature.ts';
import { inventedClimate, seasonOfTemps } from './invented.ts';

describe('soil temperature from air', () => {
  it('is the air’s own where it never changes', () => {
    expect(soilTempSeries(Array(20).fill(8), 8).at(-1)).toBeCloseTo(8, 9);
  });

  it('gives today 11 parts of 66 and ten days ago 1, then goes a fifth of the way to the year’s mean', () => {
    const jumpToday = [...Array(10).fill(0), 66];
    expect(soilTempSeries(jumpToday, 0).at(-1)).toBeCloseTo(11 * 0.8, 9);
    const jumpTenDaysAgo = [66, ...Array(10).fill(0)];
    expect(soilTempSeries(jumpTenDaysAgo, 0).at(-1)).toBeCloseTo(1 * 0.8, 9);
    expect(soilTempSeries(Array(11).fill(0), 10).at(-1)).toBeCloseTo(2, 9);
  });

  it('does without up to five missing days and not without six', () => {
    const air = (missing: number) => Array.from({ length: 11 }, (_, i) => (i < missing ? undefined : 8));
    expect(soilTempSeries(air(5), 8).at(-1)).toBeCloseTo(8, 9);
    expect(soilTempSeries(air(6), 8).at(-1)).toBeUndefined();
  });

  it('lags behind the air in spring', () => {
    const tminC = [-9, -7, -2, 3, 8, 14, 18, 17, 13, 6, 0, -6];
    const climate = inventedClimate({ normals: { tminC, tmaxC: tminC.map((tempC) => tempC + 10) } });
    // Air on 16 April 8.1 °C (minimum 3 on the middle of the month), soil of the eleven days before colder by the
    // lag of 3 1/3 days at 5/31 °C a day, then drawn to the year's mean of 9.6.
    expect(soilTempNormC(climate, '2027-04-16')).toBeGreaterThan(7);
    expect(soilTempNormC(climate, '2027-04-16')).toBeLessThan(8.1);
  });
});

/** A season whose air jumps from 0 to 20 °C on an index; the soil is warm soon after. */
function jumpOn(season: number, jump: number, missing: readonly number[] = []) {
  return seasonOfTemps(season, (index) => {
    if (missing.includes(index)) return {};
    return index < jump ? { tminC: 0, tmaxC: 0 } : { tminC: 20, tmaxC: 20 };
  });
}

describe('the day the soil is warm', () => {
  it('is the first of seven days in a row at the temperature', () => {
    const climate = inventedClimate({ seasons: [jumpOn(2001, 100)] });
    // Year's mean 20·266/365 = 14.58. Fourth warm day, 38 parts: 0.8·20·38/66 + 0.2·14.58 = 12.1; fifth, 45 parts: 13.8.
    expect(warmIndices(climate, { season: 2002, tempC: 12.5 })).toEqual([104]);
    expect(warmIndices(climate, { season: 2002, tempC: 12 })).toEqual([103]);
  });

  it('is not a warm spell of six days', () => {
    // Eight warm days of air keep the soil at 13 °C from their fifth day to two days after: six days.
    const spell = seasonOfTemps(2001, (index) => {
      const warm = (index >= 60 && index < 68) || index >= 150;
      return warm ? { tminC: 18, tmaxC: 22 } : { tminC: 0, tmaxC: 0 };
    });
    expect(warmIndices(inventedClimate({ seasons: [spell] }), { season: 2002, tempC: 13 })).toEqual([154]);
  });

  it('is not looked for in autumn', () => {
    const odds = soilWarmOdds(inventedClimate({ seasons: [jumpOn(2001, 220)] }), { season: 2027, tempC: 10 });
    expect(odds).toEqual({ shareOfYears: 0, years: 1 });
  });

  it('is not known in a season with too many days missing before it', () => {
    const gap = Array.from({ length: 20 }, (_, i) => 50 + i);
    const seasons = [jumpOn(2001, 100), jumpOn(2002, 100, gap), jumpOn(2003, 100, [200, 201])];
    expect(warmIndices(inventedClimate({ seasons }), { season: 2002, tempC: 12.5 })).toHaveLength(2);
  });

  it('has odds over the seasons of a record', () => {
    const seasons = [90, 92, 94, 96, 98, 100, 102, 104, 106].map((jump, i) => jumpOn(2001 + i, jump));
    const { early, median, late, years } = soilWarmOdds(inventedClimate({ seasons }), { season: 2027, tempC: 12.5 });
    expect([early, median, late, years]).toEqual(['2027-04-04', '2027-04-12', '2027-04-20', 9]);
  });

  it('is the day the usual soil gets there by monthly means, give or take 18 days at one year in ten', () => {
    const tminC = [-9, -7, -2, 3, 8, 14, 18, 17, 13, 6, 0, -6];
    const climate = inventedClimate({ normals: { tminC, tmaxC: tminC.map((tempC) => tempC + 10) } });
    const { early, median, late, years } = soilWarmOdds(climate, { season: 2027, tempC: 10 });
    expect(soilTempNormC(climate, median ?? '')).toBeGreaterThanOrEqual(10);
    expect([early, median, late, years]).toEqual(['2027-04-14', '2027-05-02', '2027-05-20', 0]);
  });

  it('never comes by monthly means where summer is too cold', () => {
    expect(soilWarmOdds(inventedClimate(), { season: 2027, tempC: 20 })).toEqual({ shareOfYears: 0, years: 0 });
  });
});
