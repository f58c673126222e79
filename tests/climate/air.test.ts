import { describe, expect, it } from 'vitest';
import { airNorms, airTempNormC, meanAirStaysAbove, yearlyMeanAirC } from '../../src/climate/air.ts';
import { inventedClimate, seasonOfTemps } from './invented.ts';

const COLD_WINTER = [-9, -7, -2, 3, 8, 14, 18, 17, 13, 6, 0, -6];
const monthly = inventedClimate({ normals: { tminC: COLD_WINTER, tmaxC: COLD_WINTER.map((tempC) => tempC + 10) } });

describe('usual air temperatures', () => {
  it('come from monthly means where there is no record', () => {
    expect(airTempNormC(monthly, '2027-07-16')).toEqual({ minC: 18, maxC: 28, meanC: 23 });
  });

  it('are the mean of the seasons where there is one', () => {
    const seasons = [
      seasonOfTemps(2001, () => ({ tminC: 2, tmaxC: 12 })),
      seasonOfTemps(2002, () => ({ tminC: 6, tmaxC: 20 })),
    ];
    expect(airTempNormC(inventedClimate({ seasons }), '2027-03-01')).toEqual({ minC: 4, maxC: 16, meanC: 10 });
  });

  it('are smoothed over fifteen days, around New Year too', () => {
    const one = seasonOfTemps(2001, (index) => ({ tminC: index === 1 ? 30 : 0, tmaxC: 0 }));
    const norms = airNorms(inventedClimate({ seasons: [one] }));
    expect([357, 358, 364, 0, 7, 8].map((i) => norms[i]?.minC)).toEqual([0, 2, 2, 2, 2, 0]);
  });

  it('leave missing days out of the mean', () => {
    const patchy = seasonOfTemps(2001, (index) => (index % 2 === 0 ? {} : { tminC: 3, tmaxC: 9 }));
    expect(airTempNormC(inventedClimate({ seasons: [patchy] }), '2027-06-06').meanC).toBe(6);
  });

  it('give 29 February what the 28th has', () => {
    expect(airTempNormC(monthly, '2028-02-29')).toEqual(airTempNormC(monthly, '2028-02-28'));
  });

  it('make the year’s mean', () => {
    expect(yearlyMeanAirC(inventedClimate())).toBeCloseTo(10, 9);
  });
});

describe('the span above a temperature', () => {
  it('runs from the first to the last day the usual mean is there', () => {
    // Daily mean = minimum + 5. The minimum passes 5 at 105.5 + 30.5·2/5 = 117.7 in spring and at 289 + 30.5·1/6 =
    // 294.1 in autumn, so the days are 118 and 294.
    const { from, to } = meanAirStaysAbove(monthly, { season: 2027, tempC: 10 });
    expect(from).toBe('2027-04-28');
    expect(to).toBe('2027-10-21');
  });

  it('is absent where it never gets so warm and whole where it never gets colder', () => {
    expect(meanAirStaysAbove(monthly, { season: 2027, tempC: 40 })).toEqual({});
    expect(meanAirStaysAbove(monthly, { season: 2027, tempC: -40 })).toEqual({ from: '2027-01-01', to: '2027-12-31' });
  });

  it('lies across New Year in the south', () => {
    const south = inventedClimate({
      seasonTurn: '07-01',
      latitude: -45,
      normals: {
        tminC: [...COLD_WINTER.slice(6), ...COLD_WINTER.slice(0, 6)],
        tmaxC: [...COLD_WINTER.slice(6), ...COLD_WINTER.slice(0, 6)].map((tempC) => tempC + 10),
      },
    });
    const { from, to } = meanAirStaysAbove(south, { season: 2027, tempC: 10 });
    expect(from?.slice(0, 7)).toBe('2027-10');
    expect(to?.slice(0, 7)).toBe('2028-04');
  });
});
