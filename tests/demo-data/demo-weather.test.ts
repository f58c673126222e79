import { describe, expect, it } from 'vitest';
import { DEMO_WEATHER_YEAR, shiftedWeather } from '../../demo-data/demo-weather.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { addDays, eachDay } from '../../src/measures/days.ts';
import { demoClimate, demoRecord } from './demo-season.ts';

const shifted = (anchor: string, year = DEMO_WEATHER_YEAR) => shiftedWeather(demoRecord, { year, anchor });
const on = (rows: readonly DailyWeather[], day: string) => rows.find((row) => row.day === day);

/** A day's figures without its date. */
function figures(row: DailyWeather | undefined) {
  const { day: _day, ...rest } = row ?? { day: '' };
  return rest;
}

describe('the borrowed weather', () => {
  it('lays 2018 on the anchor year and 2017 on the half year before', () => {
    const rows = shifted('2027-05-12');
    expect([rows[0]?.day, rows.at(-1)?.day]).toEqual(['2026-07-01', '2027-05-12']);
    expect(figures(on(rows, '2027-04-15'))).toEqual(figures(on(demoRecord, '2018-04-15')));
    expect(figures(on(rows, '2026-12-31'))).toEqual(figures(on(demoRecord, '2017-12-31')));
  });

  it('brings the late snow of April 2018 along (81 mm on the 15th and on the 18th, read from the record)', () => {
    const rows = shifted('2030-04-20');
    expect([on(rows, '2030-04-15')?.newSnowMm, on(rows, '2030-04-18')?.newSnowMm]).toEqual([81, 81]);
  });

  it('gives the leap day the weather of the day before', () => {
    const rows = shifted('2028-02-29');
    expect(figures(on(rows, '2028-02-29'))).toEqual(figures(on(demoRecord, '2018-02-28')));
    expect(rows).toHaveLength(eachDay('2027-07-01', '2028-02-29').length);
  });

  it('passes over the leap day of a leap year laid on a plain one', () => {
    const rows = shifted('2027-03-01', 2016);
    expect(figures(on(rows, '2027-03-01'))).toEqual(figures(on(demoRecord, '2016-03-01')));
    expect(on(rows, '2027-02-29')).toBeUndefined();
  });

  it('gives each day once, without a gap, and nothing after the anchor', () => {
    for (const anchor of ['2027-01-01', '2027-12-31', '2028-02-29', '2031-07-01']) {
      const days = shifted(anchor).map(({ day }) => day);
      expect(days).toEqual(eachDay(days[0] ?? anchor, anchor));
    }
  });

  it('leaves out days the record does not hold', () => {
    expect(shiftedWeather([{ day: '2018-05-01', tminC: 4 }], { year: 2018, anchor: '2027-05-02' })).toEqual([
      { day: '2027-05-01', tminC: 4 },
    ]);
    expect(shifted('2027-05-02', 2300)).toEqual([]);
  });
});

describe('the odds of the demo garden', () => {
  it('are counted from thirty seasons, the borrowed one not among them', () => {
    const seasons = demoClimate.seasons.map(({ season }) => season);
    expect(seasons).toHaveLength(30);
    expect(seasons).not.toContain(DEMO_WEATHER_YEAR);
    expect(seasons.at(-1)).toBe(2021);
    expect(addDays('2021-12-31', 0)).toBe(demoRecord.at(-1)?.day);
  });
});
