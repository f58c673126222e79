import { describe, expect, it } from 'vitest';
import { dayMeanC, daysAt, leapIndex, seasonsOfRows } from '../../src/climate/season-weather.ts';
import { rowsBetween } from './invented.ts';

describe('daily rows laid out in seasons', () => {
  it('splits a northern record at New Year', () => {
    const seasons = seasonsOfRows('01-01', rowsBetween('2026-12-30', '2027-01-02'), 0);
    expect(seasons.map(({ season }) => season)).toEqual([2026, 2027]);
    expect(seasons[0]?.tminC.slice(362)).toEqual([undefined, 10, 10]);
    expect(seasons[1]?.tminC.slice(0, 3)).toEqual([10, 10, undefined]);
  });

  it('keeps a southern record whole over New Year', () => {
    const seasons = seasonsOfRows('07-01', rowsBetween('2026-12-30', '2027-01-02'), 0);
    expect(seasons.map(({ season }) => season)).toEqual([2026]);
    expect(seasons[0]?.tmaxC.slice(181, 188)).toEqual([undefined, 20, 20, 20, 20, undefined, undefined]);
  });

  it('keeps 29 February beside the 28th', () => {
    const rows = rowsBetween('2028-02-28', '2028-03-01', (day) => ({ tminC: Number(day.slice(8)) }));
    const [season] = seasonsOfRows('01-01', rows, 0);
    expect(season && daysAt('01-01', season, 59).map(({ tminC }) => tminC)).toEqual([28, 29]);
    expect(season && daysAt('01-01', season, 60).map(({ tminC }) => tminC)).toEqual([1]);
  });

  it('knows where the leap day lies in either half of the world', () => {
    expect([leapIndex('01-01'), leapIndex('07-01')]).toEqual([59, 243]);
  });

  it('adds the offset to what was measured and leaves the rest absent', () => {
    const [season] = seasonsOfRows('01-01', [{ day: '2027-01-01', tminC: -3 }], 1.5);
    expect(season?.tminC[0]).toBe(-1.5);
    expect(season?.tmaxC[0]).toBeUndefined();
  });

  it('puts rows in order whatever order they come in, the later of two for one day winning', () => {
    const seasons = seasonsOfRows(
      '01-01',
      [
        { day: '2027-01-01', tminC: 1 },
        { day: '2026-01-01', tminC: 2 },
        { day: '2027-01-01', tminC: 3 },
      ],
      0,
    );
    expect(seasons.map(({ season, tminC }) => [season, tminC[0]])).toEqual([
      [2026, 2],
      [2027, 3],
    ]);
  });
});

it('has no mean for a day half measured', () => {
  expect(dayMeanC({ tminC: 4, tmaxC: 11 })).toBe(7.5);
  expect(dayMeanC({ tminC: 4 })).toBeUndefined();
});
