import { describe, expect, test } from 'vitest';
import { freezeNights } from '../../src/climate/freeze-nights.ts';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import { withWeather } from '../../src/climate/logged.ts';
import type { LoggedDay } from '../../src/garden/weather.ts';
import { type Day, eachDay } from '../../src/measures/days.ts';
import { inventedClimate, seasonOfTemps } from './invented.ts';
import { NO_OFFSETS } from './real-data.ts';

/** Ten seasons in which frost ends on 1 May (index 121), in three of them on 10 April (index 100); autumn's on 1 October. */
const tenSeasons = Array.from({ length: 10 }, (_, i) =>
  seasonOfTemps(2001 + i, (index) => ({ tminC: index < (i < 3 ? 100 : 121) || index >= 274 ? -1 : 5, tmaxC: 12 })),
);
const climate = inventedClimate({ seasons: tenSeasons });
const on = (given: typeof climate, day: Day, limitF: 32 | 28 = 32) =>
  freezeNights(given, limitF, { from: day, to: day })[0]?.share;
const seen = (from: Day, to: Day, tminC: number): LoggedDay[] =>
  eachDay(from, to).map((day) => ({ kind: 'observed', day, tminC }));

describe('the odds of a freeze night by night', () => {
  test('are the share of the record with the three nights on either side', () => {
    expect(on(climate, '2027-04-20')).toBeCloseTo(0.7);
    // 9 April is index 99: of its seven nights four are after the frost of three seasons in ten.
    expect(on(climate, '2027-04-09')).toBeCloseTo((4 * 1 + 3 * 0.7) / 7);
    expect(on(climate, '2027-05-04')).toBe(0);
  });

  test('are none at a limit that no night reaches', () => {
    expect(on(climate, '2027-04-20', 28)).toBe(0);
  });

  test('of nights that were seen are what was seen', () => {
    const warm = withWeather(climate, seen('2027-04-14', '2027-04-20', 4), '2027-04-20');
    expect(on(warm, '2027-04-17')).toBe(0);
    expect(on(warm, '2027-04-20')).toBeCloseTo((3 * 0.7) / 7);
    expect(on(warm, '2027-04-24')).toBeCloseTo(0.7);
    expect(on(warm, '2028-04-17')).toBeCloseTo(0.7);
  });

  test('move with the days by which a garden is colder, at both ends, and the nights that were seen do not', () => {
    const colder = inventedClimate({ seasons: tenSeasons, frostOffsetDays: 7 });
    expect(on(colder, '2027-05-04')).toBeCloseTo(0.7);
    expect(on(colder, '2027-09-27')).toBe(1);
    expect(on(climate, '2027-09-27')).toBe(0);
    const warm = withWeather(colder, seen('2027-05-01', '2027-05-07', 4), '2027-05-07');
    expect(on(warm, '2027-05-04')).toBe(0);
  });

  test('run over a leap day and New Year, one row a day', () => {
    for (const [from, to] of [
      ['2027-12-30', '2028-01-02'],
      ['2028-02-27', '2028-03-01'],
    ] as const) {
      const nights = freezeNights(climate, 32, { from, to });
      expect(nights.map(({ day }) => day)).toEqual(eachDay(from, to));
      for (const { share } of nights) expect(share).toBe(1);
    }
  });

  test('lie half a year off in the south', () => {
    const south = inventedClimate({ seasons: tenSeasons, seasonTurn: '07-01', latitude: -45 });
    // Index 110 of a southern season is 18 October.
    expect(on(south, '2027-10-18')).toBeCloseTo(0.7);
    expect(on(south, '2027-12-31')).toBe(0);
  });

  test('come from the mean minimum where only monthly means are known', () => {
    // Half of the nights lie below their mean: 0.28 °C is 32.5 °F, up to where a night counts as 32 °F.
    const level = inventedClimate({ normals: { tminC: Array(12).fill(0.278), tmaxC: Array(12).fill(10) } });
    expect(on(level, '2027-04-20')).toBeCloseTo(0.5, 3);
    expect(on(level, '2027-04-20', 28)).toBeLessThan(0.4);
  });

  test('are not told by a climate of two freeze dates', () => {
    const dates = climateFromFrostDates({
      latitude: 43,
      longitude: -80,
      ...NO_OFFSETS,
      lastSpring: '05-06',
      firstAutumn: '10-04',
    });
    expect(freezeNights(dates, 32, { from: '2027-04-01', to: '2027-05-01' })).toEqual([]);
  });
});
