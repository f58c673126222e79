import { describe, expect, it } from 'vitest';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { dayParts } from '../../src/measures/days.ts';
import { rowsBetween } from './invented.ts';
import { NO_OFFSETS } from './real-data.ts';

/** A record that freezes on the mornings of 1 May and 1 October of every year, in a week of −20 °C in January. */
function freezingRows(from: string, to: string): DailyWeather[] {
  return rowsBetween(from, to, (day) => {
    const { month, dayOfMonth } = dayParts(day);
    if (month === 1 && dayOfMonth <= 7) return { tminC: -20, rainMm: 0 };
    return (month === 5 || month === 10) && dayOfMonth === 1 ? { tminC: -1, rainMm: 3.1 } : { rainMm: 0 };
  });
}

const base = { latitude: 45, longitude: -90, origin: 'An invented record.', ...NO_OFFSETS };
const record = { ...base, rows: freezingRows('1980-01-01', '2020-12-31') };

describe('a climate from a daily record', () => {
  it('takes the last thirty seasons', () => {
    const { seasons, notes } = climateFromRecord(record);
    expect([seasons[0]?.season, seasons.at(-1)?.season, seasons.length]).toEqual([1991, 2020, 30]);
    expect(notes).toEqual(['Counted from 30 seasons, 1991 to 2020.']);
  });

  it('takes as many as are wanted, before a season, without those left out', () => {
    const { seasons } = climateFromRecord({ ...record, seasonsWanted: 12, before: 2010, leaveOut: [2005, 2009] });
    expect(seasons.map(({ season }) => season)).toEqual([
      1996, 1997, 1998, 1999, 2000, 2001, 2002, 2003, 2004, 2006, 2007, 2008,
    ]);
  });

  it('counts freezes, zone and monthly means', () => {
    const { freezes, zone, normals } = climateFromRecord(record);
    expect(freezes[32]['last-spring']).toEqual({ kind: 'counted', indices: Array(30).fill(121), seasonsUsed: 30 });
    expect(freezes[32]['first-autumn']).toMatchObject({ indices: Array(30).fill(274) });
    expect(freezes[24]['last-spring']).toMatchObject({ indices: Array(30).fill(7) });
    expect(freezes[24]['first-autumn']).toEqual({ kind: 'none' });
    expect(zone).toEqual({ zone: '6b', meanYearlyMinimumC: -20, winters: 30 });
    expect(normals.tminC[0]).toBeCloseTo((24 * 10 - 7 * 20) / 31, 9);
    expect(normals.tmaxC).toEqual(Array(12).fill(20));
    expect(normals.rainMm?.[4]).toBeCloseTo(3.1, 9);
    expect(normals.rainMm?.[5]).toBe(0);
  });

  it('leaves out a season that is not half there', () => {
    const started = climateFromRecord({ ...base, rows: freezingRows('1999-09-01', '2020-12-31') });
    expect(started.seasons[0]?.season).toBe(2000);
    const begun = climateFromRecord({ ...base, rows: freezingRows('1980-01-01', '2020-03-31') });
    expect(begun.seasons.at(-1)?.season).toBe(2019);
  });

  it('is refused where a month was never measured, highs or lows', () => {
    const without = (months: readonly number[]) => ({
      ...base,
      rows: record.rows.map(({ tmaxC, ...row }) =>
        tmaxC === undefined || months.includes(dayParts(row.day).month) ? row : { ...row, tmaxC },
      ),
    });
    expect(() => climateFromRecord(without([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]))).toThrow(/no highs of any month/);
    expect(() => climateFromRecord(without([1, 12]))).toThrow(/no highs of January, December\./);
  });

  it('says so where seasons are few or have gaps, and gives no zone below ten winters', () => {
    const gap = freezingRows('2006-01-01', '2020-12-31').filter(({ day }) => day < '2010-08-20' || day > '2010-09-05');
    const { notes, zone, freezes } = climateFromRecord({ ...base, rows: gap, leaveOut: [2008, 2014] });
    expect(freezes[32]['first-autumn']).toMatchObject({ seasonsUsed: 12 });
    expect(freezes[32]['last-spring']).toMatchObject({ seasonsUsed: 13 });
    expect(notes).toEqual([
      'Counted from 13 seasons, 2006 to 2020.',
      'Fewer than 20 seasons: the dates of one year in ten are rough.',
      'Not measured in them: 17 lows, 17 highs, 17 days of rain. Such days are left out or said, never taken for nought.',
      'Days are missing where a freeze date could have been, so these seasons count in part: 2010.',
    ]);
    expect(zone?.winters).toBe(10);
    const fewer = climateFromRecord({ ...base, rows: gap, leaveOut: [2008, 2012, 2014] });
    expect(fewer.zone).toBeUndefined();
    expect(fewer.notes.at(-1)).toBe('Fewer than 10 whole winters: no hardiness zone.');
  });

  it('refuses fewer than ten seasons, with the count and a way out', () => {
    const short = () => climateFromRecord({ ...base, rows: freezingRows('2012-01-01', '2020-12-31') });
    expect(short).toThrow(InputRefused);
    expect(short).toThrow('9 usable seasons; 10 are needed. Give a longer record, or name a station');
    expect(() => climateFromRecord({ ...base, rows: [] })).toThrow('0 rows hold 0 usable seasons');
  });
});

describe('a garden unlike the place of its record', () => {
  it('has its own degrees added before anything is counted', () => {
    const warm = climateFromRecord({ ...record, tempOffsetC: 1.5 });
    expect(warm.freezes[32]['last-spring']).toMatchObject({ indices: Array(30).fill(7) });
    expect(warm.zone?.meanYearlyMinimumC).toBe(-18.5);
    expect(warm.seasons[0]?.tmaxC[200]).toBe(21.5);
    expect(warm.normals.tmaxC[6]).toBe(21.5);
    expect(warm.notes.at(-1)).toBe('Temperatures are taken ⟦1.5 deltaC⟧ warmer, as the garden asks.');
  });

  it('has its season shortened at both ends', () => {
    const pocket = climateFromRecord({ ...record, frostOffsetDays: 6 });
    expect(pocket.freezes[32]['last-spring']).toMatchObject({ indices: Array(30).fill(127) });
    expect(pocket.freezes[32]['first-autumn']).toMatchObject({ indices: Array(30).fill(268) });
    expect(pocket.notes.at(-1)).toBe('The freeze-free season is taken 6 days shorter at each end, as the garden asks.');
  });
});
