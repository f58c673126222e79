/**
 * A northern record moved half a year: the same seasons, south of the equator.
 */
import { describe, expect, it } from 'vitest';
import { freezeDay } from '../../src/climate/freeze.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import { heatOdds } from '../../src/climate/heat.ts';
import { dayOfIndex, seasonIndex, seasonOf } from '../../src/climate/season.ts';
import { soilWarmOdds } from '../../src/climate/soil-temperature.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { NO_OFFSETS, recordRows } from './real-data.ts';

const northRows = recordRows('milwaukee').filter(({ day }) => !day.endsWith('-02-29'));
const southRows: DailyWeather[] = northRows.map((row) => ({
  ...row,
  day: dayOfIndex('07-01', seasonOf('01-01', row.day), seasonIndex('01-01', row.day)),
}));

const north = climateFromRecord({ latitude: 43, longitude: -88, rows: northRows, origin: 'north', ...NO_OFFSETS });
const south = climateFromRecord({ latitude: -43, longitude: -88, rows: southRows, origin: 'south', ...NO_OFFSETS });

/** The northern day at the season index of a southern one. */
function northernOf(day: string | undefined): string {
  return dayOfIndex('01-01', seasonOf('07-01', day ?? ''), seasonIndex('07-01', day ?? ''));
}

describe('the same weather in the south', () => {
  it('freezes at the same indices and has the same zone', () => {
    expect(south.freezes).toEqual(north.freezes);
    expect(south.zone).toEqual(north.zone);
  });

  it('has its last freeze in October and its first in April', () => {
    const ask = { limitF: 32, season: 2027, chancePercent: 50 } as const;
    const [spring, autumn] = [
      freezeDay(south, { ...ask, event: 'last-spring' }),
      freezeDay(south, { ...ask, event: 'first-autumn' }),
    ];
    expect([spring, autumn]).toEqual(['2027-10-21', '2028-04-22']);
    expect(northernOf(spring)).toBe(freezeDay(north, { ...ask, event: 'last-spring' }));
    expect(northernOf(autumn)).toBe(freezeDay(north, { ...ask, event: 'first-autumn' }));
  });

  it('reaches a heat sum at the same index from midwinter, from spring and across midwinter', () => {
    for (const [index, sum] of [
      [1, 450],
      [110, 350],
      [235, 900],
    ] as const) {
      const count = { method: 'mean-over-base', baseC: 4.4, sum } as const;
      const inNorth = heatOdds(north, { ...count, from: dayOfIndex('01-01', 2027, index) });
      const inSouth = heatOdds(south, { ...count, from: dayOfIndex('07-01', 2027, index) });
      expect(northernOf(inSouth.medianDay)).toBe(inNorth.medianDay);
      expect(inSouth.spreadDays).toBeCloseTo(inNorth.spreadDays, 9);
      expect(inSouth.odds.years).toBe(inNorth.odds.years);
    }
  });

  it('warms its soil at the same index', () => {
    const inNorth = soilWarmOdds(north, { season: 2027, tempC: 10 });
    const inSouth = soilWarmOdds(south, { season: 2027, tempC: 10 });
    expect(northernOf(inSouth.median)).toBe(inNorth.median);
    expect(inSouth.median?.slice(0, 7)).toBe('2027-10');
  });
});
