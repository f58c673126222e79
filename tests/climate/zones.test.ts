import { describe, expect, it } from 'vitest';
import { hardinessZoneOf, yearlyMinima, zoneMiddleF } from '../../src/climate/zones.ts';
import { celsius } from '../../src/measures/units.ts';
import { seasonOfTemps } from './invented.ts';

describe('the coldest night of each winter', () => {
  /** Seasons at 5 °C with single nights of their own. */
  const withNights = (season: number, nights: Record<number, number | undefined>) =>
    seasonOfTemps(season, (index) => (index in nights ? nightOf(nights[index]) : { tminC: 5, tmaxC: 9 }));
  const nightOf = (tminC: number | undefined) => (tminC === undefined ? {} : { tminC, tmaxC: 9 });

  it('belongs to a winter from midsummer to midsummer, so that one winter is never counted twice', () => {
    const seasons = [withNights(2001, { 340: -20 }), withNights(2002, { 20: -25, 350: -10 }), withNights(2003, {})];
    expect(yearlyMinima(seasons)).toEqual([
      { season: 2002, tminC: -25 },
      { season: 2003, tminC: -10 },
    ]);
  });

  it('is left out where a midwinter night is missing, and kept where another one is', () => {
    const seasons = [withNights(2001, {}), withNights(2002, { 59: undefined }), withNights(2003, { 60: undefined })];
    expect(yearlyMinima(seasons).map(({ season }) => season)).toEqual([2003]);
  });

  it('needs two seasons next to each other', () => {
    expect(yearlyMinima([withNights(2001, {}), withNights(2003, {})])).toEqual([]);
  });

  it('may fall on 29 February', () => {
    const seasons = [withNights(2003, {}), { ...withNights(2004, {}), leapDay: { tminC: -30 } }];
    expect(yearlyMinima(seasons)).toEqual([{ season: 2004, tminC: -30 }]);
  });
});

it('takes temperatures beyond the table for its ends', () => {
  expect(hardinessZoneOf(celsius(-80))).toBe('1a');
  expect(hardinessZoneOf(celsius(90))).toBe('13b');
});

it('finds the middle of a half zone again', () => {
  expect([zoneMiddleF('1a'), zoneMiddleF('5b'), zoneMiddleF('10a')]).toEqual([-57.5, -12.5, 32.5]);
  for (const zone of ['1a', '4b', '6a', '9b', '13b']) expect(hardinessZoneOf(celsius(zoneMiddleF(zone)))).toBe(zone);
});

it('knows no zone that is not in the table', () => {
  expect(() => zoneMiddleF('5')).toThrow('There is no hardiness zone "5": give a half zone such as "5b".');
});
