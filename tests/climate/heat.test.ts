import { describe, expect, it } from 'vitest';
import type { SeasonWeather } from '../../src/climate/climate.ts';
import { heatOdds, heatRuns, heatUnits } from '../../src/climate/heat.ts';
import { inventedClimate, seasonOfTemps } from './invented.ts';

const plain = { method: 'mean-over-base', baseC: 4 } as const;

/** A season of 10 units a day above 4 °C, with days missing where asked. */
function tenADay(season: number, missing: readonly number[] = []): SeasonWeather {
  return seasonOfTemps(season, (index) => (missing.includes(index) ? {} : { tminC: 9, tmaxC: 19 }));
}

describe('heat units of a day', () => {
  it('are the plain mean above the base, never less than nothing', () => {
    expect(heatUnits({ tminC: 2, tmaxC: 14 }, plain)).toBe(4);
    expect(heatUnits({ tminC: -8, tmaxC: 6 }, plain)).toBe(0);
  });

  it('cut the plain mean at the upper limit', () => {
    expect(heatUnits({ tminC: 20, tmaxC: 34 }, { method: 'mean-over-base', baseC: 0, upperC: 22.5 })).toBe(22.5);
  });

  it('raise minimum and maximum to the base and cut both, in the raised mean', () => {
    const raised = { method: 'raised-to-base', baseC: 10, upperC: 30 } as const;
    expect(heatUnits({ tminC: 4, tmaxC: 20 }, raised)).toBe(5);
    expect(heatUnits({ tminC: 14, tmaxC: 36 }, raised)).toBe(12);
    expect(heatUnits({ tminC: 32, tmaxC: 36 }, raised)).toBe(20);
    expect(heatUnits({ tminC: -4, tmaxC: 8 }, raised)).toBe(0);
  });

  it('are never fewer in the raised mean than in the plain one', () => {
    for (let tminC = -15; tminC <= 25; tminC += 1)
      for (let tmaxC = tminC; tmaxC <= 35; tmaxC += 2)
        expect(heatUnits({ tminC, tmaxC }, { method: 'raised-to-base', baseC: 4 })).toBeGreaterThanOrEqual(
          heatUnits({ tminC, tmaxC }, plain) - 1e-9,
        );
  });
});

describe('when a heat sum is reached in a record', () => {
  const climate = inventedClimate({ seasons: [tenADay(2001), tenADay(2002), tenADay(2003)] });

  it('counts the first day in', () => {
    const { odds, medianDay, spreadDays } = heatOdds(climate, { ...plain, from: '2027-04-01', sum: 100 });
    expect(medianDay).toBe('2027-04-10');
    expect(odds).toEqual({ early: '2027-04-10', median: '2027-04-10', late: '2027-04-10', shareOfYears: 1, years: 3 });
    expect(spreadDays).toBe(0);
  });

  it('goes on into the next season, and leaves out the last one, which has none', () => {
    const { odds } = heatOdds(climate, { ...plain, from: '2027-12-25', sum: 100 });
    expect(odds).toMatchObject({ median: '2028-01-03', years: 2 });
  });

  it('does not jump a season that is left out', () => {
    const gap = inventedClimate({ seasons: [tenADay(2001), tenADay(2003), tenADay(2004)] });
    expect(heatRuns(gap, { ...plain, from: '2027-12-25', sum: 100 })).toEqual([9]);
  });

  it('counts 29 February in leap years', () => {
    const leap = { ...tenADay(2004), leapDay: { tminC: 9, tmaxC: 19 } };
    const runs = heatRuns(inventedClimate({ seasons: [tenADay(2003), leap] }), {
      ...plain,
      from: '2027-02-25',
      sum: 100,
    });
    expect(runs).toEqual([9, 8]);
  });

  it('takes a missing day for the one before it, up to five of them', () => {
    const patchy = inventedClimate({ seasons: [tenADay(2001, [93, 94, 95, 96, 97])] });
    expect(heatRuns(patchy, { ...plain, from: '2027-04-01', sum: 100 })).toEqual([9]);
    const gappy = inventedClimate({ seasons: [tenADay(2001, [93, 94, 95, 96, 97, 98])] });
    expect(heatRuns(gappy, { ...plain, from: '2027-04-01', sum: 100 })).toEqual([]);
  });

  it('does not mind days missing outside the span', () => {
    const patchy = inventedClimate({ seasons: [tenADay(2001, [1, 2, 3, 4, 5, 6, 7, 300])] });
    expect(heatRuns(patchy, { ...plain, from: '2027-04-01', sum: 100 })).toEqual([9]);
  });

  it('has no late day where one season in three never gets there', () => {
    const cold = seasonOfTemps(2003, () => ({ tminC: -10, tmaxC: 0 }));
    const after = seasonOfTemps(2004, () => ({ tminC: -10, tmaxC: 0 }));
    const mixed = inventedClimate({ seasons: [tenADay(2001), tenADay(2002), cold, after] });
    const { odds } = heatOdds(mixed, { ...plain, from: '2027-01-01', sum: 100 });
    expect(odds).toEqual({ early: '2027-01-10', shareOfYears: 0.5, years: 4 });
  });

  it('falls back on the usual spread when a single season tells', () => {
    const one = inventedClimate({ seasons: [tenADay(2001)] });
    expect(heatOdds(one, { ...plain, from: '2027-04-01', sum: 100 }).spreadDays).toBe(4);
  });

  it('runs in the southern season, over New Year', () => {
    const south = inventedClimate({ seasonTurn: '07-01', latitude: -43, seasons: [tenADay(2001), tenADay(2002)] });
    expect(heatOdds(south, { ...plain, from: '2027-12-28', sum: 100 }).odds).toMatchObject({
      median: '2028-01-06',
      years: 2,
    });
  });
});

describe('when a heat sum is reached by monthly means', () => {
  const mild = inventedClimate({ normals: { tminC: Array(12).fill(14), tmaxC: Array(12).fill(34) } });

  it('counts the usual units, far above the base', () => {
    const { odds, medianDay, spreadDays } = heatOdds(mild, { ...plain, from: '2027-06-01', sum: 200 });
    expect(medianDay).toBe('2027-06-10');
    expect(spreadDays).toBe(4);
    // 1.2816 × 4 days to either side.
    expect(odds).toEqual({ early: '2027-06-05', median: '2027-06-10', late: '2027-06-15', shareOfYears: 1, years: 0 });
  });

  it('spreads counts from midwinter, or across it, more widely', () => {
    expect(heatOdds(mild, { ...plain, from: '2027-01-01', sum: 200 }).spreadDays).toBe(7);
    expect(heatOdds(mild, { ...plain, from: '2027-12-30', sum: 200 }).spreadDays).toBe(7);
    expect(heatOdds(mild, { ...plain, from: '2027-01-02', sum: 200 }).spreadDays).toBe(4);
  });

  it('has no date where a year does not do', () => {
    const { odds, medianDay } = heatOdds(mild, { ...plain, from: '2027-06-01', sum: 1e5 });
    expect(odds).toEqual({ shareOfYears: 0, years: 0 });
    expect(medianDay).toBeUndefined();
  });

  it('cuts the small-grain count at 21.1 °C while young and at 35 °C later', () => {
    const hot = inventedClimate({ normals: { tminC: Array(12).fill(34.9), tmaxC: Array(12).fill(60) } });
    const reached = (sum: number) =>
      heatOdds(hot, { method: 'small-grain', baseC: 0, from: '2027-07-01', sum }).medianDay;
    // 21.1 a day until 213: eleven days make 232.1; from then on a day has up to 35.
    expect(reached(232)).toBe('2027-07-11');
    expect(reached(232.2)).toBe('2027-07-12');
    expect(reached(264)).toBe('2027-07-12');
    expect(reached(268)).toBe('2027-07-13');
  });
});
