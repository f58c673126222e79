import { describe, expect, it } from 'vitest';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { PLACES, recordRows } from '../climate/real-data.ts';
import { actualDate, dateOf, knownOn, type Place, pastOf, scoreOf, TARGETS, trialsOf } from './hindcast.ts';

const bozeman: Place = { name: 'bozeman', ...PLACES.bozeman, rows: recordRows('bozeman') };
const TODAY = '2004-04-15';

/** What is foretold on a day, from rows of which some are made absurd. */
function foretold(absurd: (row: DailyWeather) => boolean) {
  const rows = bozeman.rows.map((row) => (absurd(row) ? { day: row.day, tminC: -40, tmaxC: 40, rainMm: 90 } : row));
  const place = { ...bozeman, rows };
  const known = knownOn(pastOf(place, 2004), place, TODAY);
  return TARGETS.map((target) => dateOf(known, target, 2004));
}

describe('the hindcast', () => {
  it('sees nothing of the days after the one it stands on', () => {
    expect(foretold(({ day }) => day > TODAY)).toEqual(foretold(() => false));
    expect(foretold(({ day }) => day >= '2004-04-10')).not.toEqual(foretold(() => false));
  });

  it('sees nothing of seasons more than thirty before it', () => {
    expect(pastOf(bozeman, 2004).seasons.map(({ season }) => season)).toEqual(
      Array.from({ length: 30 }, (_, i) => 1974 + i),
    );
    // The autumn before the oldest season stands behind its spring.
    expect(foretold(({ day }) => day < '1973-07-01')).toEqual(foretold(() => false));
  });

  it('takes the day it was from the year alone, and no day that a gap may hide', () => {
    // Bozeman lacks 1 September to 15 October 1995, and seven days of September 1993 (NOAA GHCN-Daily).
    expect(actualDate(bozeman, 'first autumn freeze', 1995)).toBeUndefined();
    expect(actualDate(bozeman, 'first autumn freeze', 1992)).toBe('1992-08-23');
    expect(trialsOf(bozeman, [1995]).some(({ target }) => target === 'first autumn freeze')).toBe(false);
  });

  it('leaves out what is past where it stands', () => {
    const standings = trialsOf(bozeman, [2004]).filter(({ target }) => target === 'last spring freeze');
    expect(standings.map(({ standing }) => standing)).toEqual(['03-01', '04-15']);
  });

  it('gives a share with its interval by Wilson', () => {
    // 8 of 10: 0.490 to 0.943, by arithmetic on the formula.
    const trial = { place: 'x', target: 'last spring freeze', standing: '03-01', year: 2000 } as const;
    const trials = Array.from({ length: 10 }, (_, i) => ({
      ...trial,
      errorDays: i % 2 === 0 ? 3 : -3,
      plainErrorDays: 4,
      inside: i < 8,
    }));
    const { insideShare, interval, meanErrorDays } = scoreOf(trials);
    expect([insideShare, meanErrorDays]).toEqual([0.8, 3]);
    expect(interval[0]).toBeCloseTo(0.49, 3);
    expect(interval[1]).toBeCloseTo(0.943, 3);
  });
});
