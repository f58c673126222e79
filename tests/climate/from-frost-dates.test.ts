import { describe, expect, it } from 'vitest';
import { freezeDay, freezeOdds } from '../../src/climate/freeze.ts';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import { heatOdds } from '../../src/climate/heat.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { NO_OFFSETS } from './real-data.ts';

const garden = { latitude: 44, longitude: 0, lastSpring: '05-10', firstAutumn: '09-28', ...NO_OFFSETS };
const season = { limitF: 32, season: 2027 } as const;

describe('a climate from two freeze dates', () => {
  const climate = climateFromFrostDates(garden);

  it('keeps the dates as the medians they are', () => {
    expect(freezeOdds(climate, { ...season, event: 'last-spring' }).median).toBe('2027-05-10');
    expect(freezeOdds(climate, { ...season, event: 'first-autumn' }).median).toBe('2027-09-28');
    expect(climate.confidence).toBe('assumed');
  });

  it('assumes the spread of the median station', () => {
    // 1.2816 × 10.9 = 14.0 days.
    expect(freezeDay(climate, { ...season, event: 'last-spring', chancePercent: 10 })).toBe('2027-05-24');
  });

  it('has a year that is warmest midway between them and at freeze level on them', () => {
    const { tminC, tmaxC, rainMm } = climate.normals;
    const warmest = tminC.indexOf(Math.max(...tminC));
    expect(warmest).toBe(6);
    // Median station of the table north of 40°: 13.0 °C between night and day in July, 12.5 °C of swing to either side.
    expect((tmaxC[6] ?? 0) - (tminC[6] ?? 0)).toBeCloseTo(13, 9);
    expect((Math.max(...tminC) - Math.min(...tminC)) / 2).toBeGreaterThan(12);
    expect((Math.max(...tminC) - Math.min(...tminC)) / 2).toBeLessThanOrEqual(12.5);
    expect(rainMm).toBeUndefined();
  });

  it('lets heat sums be counted', () => {
    const { medianDay } = heatOdds(climate, { method: 'mean-over-base', baseC: 4.4, from: '2027-01-01', sum: 450 });
    expect((medianDay ?? '') > '2027-05-15' && (medianDay ?? '') < '2027-06-25').toBe(true);
  });

  it('swings more where the zone is colder', () => {
    const coldest = (hardinessZone: string) =>
      Math.min(...climateFromFrostDates({ ...garden, hardinessZone }).normals.tminC);
    expect(coldest('4a')).toBeLessThan(coldest('5b'));
    expect(coldest('5b')).toBeLessThan(coldest('7a'));
    // Zone 5b has its middle at −12.5 °F, −24.7 °C; the coldest month is taken 16 °C warmer than that.
    expect(coldest('5b')).toBeCloseTo(-24.7 + 16, 0);
  });

  it('never swings more or less than nine stations of ten', () => {
    const swing = (hardinessZone: string) => {
      const { tminC } = climateFromFrostDates({ ...garden, hardinessZone }).normals;
      return (Math.max(...tminC) - Math.min(...tminC)) / 2;
    };
    expect(swing('1a')).toBeLessThanOrEqual(15.1);
    expect(swing('1a')).toBeGreaterThan(14.5);
    expect(swing('13b')).toBeGreaterThan(7.6);
    expect(swing('13b')).toBeLessThanOrEqual(8);
  });

  it('stands in a southern year with southern dates', () => {
    const south = climateFromFrostDates({ ...garden, latitude: -44, lastSpring: '10-20', firstAutumn: '04-25' });
    expect(freezeOdds(south, { ...season, event: 'last-spring' }).median).toBe('2027-10-20');
    expect(freezeOdds(south, { ...season, event: 'first-autumn' }).median).toBe('2028-04-25');
    expect(south.normals.tminC.indexOf(Math.max(...south.normals.tminC))).toBe(0);
    expect((south.normals.tmaxC[0] ?? 0) - (south.normals.tminC[0] ?? 0)).toBeCloseTo(13, 9);
  });

  it('refuses dates in the wrong half of the year, as with a latitude of the wrong sign', () => {
    const wrong = () => climateFromFrostDates({ ...garden, latitude: -44 });
    expect(wrong).toThrow(InputRefused);
    expect(wrong).toThrow('lastSpring 05-10 and firstAutumn 09-28 do not lie in spring and autumn at latitude -44');
    expect(wrong).toThrow('lastSpring falls from July to January');
    expect(() => climateFromFrostDates({ ...garden, lastSpring: '09-28', firstAutumn: '05-10' })).toThrow(InputRefused);
  });

  it('takes 29 February for the 28th', () => {
    const leap = climateFromFrostDates({ ...garden, lastSpring: '02-29' });
    expect(freezeOdds(leap, { ...season, event: 'last-spring' }).median).toBe('2027-02-28');
  });

  it('says what it assumes', () => {
    expect(climate.notes[1]).toMatch('assumed from the freeze dates alone');
    expect(climateFromFrostDates({ ...garden, hardinessZone: '5b' }).notes[1]).toMatch('freeze dates and zone 5b');
  });
});
