import { describe, expect, it } from 'vitest';
import { nearestStations, seenFrom, stationFreezes, weightedFreezeDates } from '../../src/climate/stations.ts';
import { inventedStation as station, yearRoundStation as yearRound } from './invented.ts';

const garden = { latitude: 44, longitude: 0, elevationM: 300 };

describe('the nearest stations', () => {
  it('come nearest first with distance and height difference', () => {
    const near = nearestStations([station('far', 46), station('near', 44.1), station('mid', 43.5)], garden, 2);
    expect(near.map(({ station: { id } }) => id)).toEqual(['near', 'mid']);
    expect(near[0]?.distanceKm).toBeCloseTo(11.12, 1);
    expect(near[0]?.heightDifferenceM).toBe(-100);
  });

  it('include those with a freeze in every month', () => {
    expect(nearestStations([station('a', 45), yearRound('b', 44.1)], garden, 1)[0]?.station.id).toBe('b');
  });

  it('have no height difference where the garden’s height is not known', () => {
    expect(seenFrom({ latitude: 44, longitude: 0 }, station('a', 44))).toEqual({
      station: station('a', 44),
      distanceKm: 0,
    });
  });

  it('are found across the date line', () => {
    const beyond = { ...station('b', 52), longitude: -179.9 };
    expect(seenFrom({ latitude: 52, longitude: 179.9 }, beyond).distanceKm).toBeCloseTo(13.7, 1);
  });

  it('come in the same order whatever order the table has, equal distances by id', () => {
    const [a, b] = [station('a', 44.2), station('b', 43.8)];
    expect(nearestStations([b, a], garden, 2)).toEqual(nearestStations([a, b], garden, 2));
  });
});

describe('a station’s dates', () => {
  it('are indices of a northern season', () => {
    expect(stationFreezes(station('a', 44))).toEqual({
      springP50: 130,
      springP90: 115,
      autumnP50: 271,
      autumnP90: 285,
    });
  });

  it('are refused where they wrap the year or are not given', () => {
    expect(stationFreezes(station('a', 44, { wrapsYear: true }))).toBeUndefined();
    expect(stationFreezes(yearRound('a', 44))).toBeUndefined();
  });
});

describe('the dates of several stations', () => {
  const level = { latitude: 44, longitude: 0, elevationM: 200 };

  it('weigh by nearness, all within five kilometres alike', () => {
    const near = [
      { station: station('a', 44, { lastSpringP50: '05-01' }), distanceKm: 1 },
      { station: station('b', 44, { lastSpringP50: '05-11' }), distanceKm: 5 },
      { station: station('c', 44, { lastSpringP50: '05-31' }), distanceKm: 10 },
    ];
    // (1·0 + 1·10 + ½·30)/2.5 = 10 days after 1 May.
    expect(weightedFreezeDates(near)?.['last-spring'].p50).toBe('05-11');
  });

  it('come later in spring and earlier in autumn at a garden 100 m higher, by 3.8 and 2.1 days', () => {
    const near = nearestStations([station('a', 44)], { ...level, elevationM: 300 }, 1);
    expect(weightedFreezeDates(near)).toMatchObject({
      'last-spring': { p50: '05-14', p90: '04-29' },
      'first-autumn': { p50: '09-26', p90: '10-10' },
    });
  });

  it('mirror the cautious date from the other two', () => {
    const dates = weightedFreezeDates(nearestStations([station('a', 44)], level, 1));
    expect(dates?.['last-spring']).toEqual({ p10: '05-25', p50: '05-10', p90: '04-25' });
    expect(dates?.['first-autumn']).toEqual({ p10: '09-14', p50: '09-28', p90: '10-12' });
  });

  it('leave out stations without dates and say how many were used', () => {
    const near = nearestStations([station('a', 44), yearRound('b', 44.1), station('c', 44.2)], level, 3);
    expect(weightedFreezeDates(near)?.stationsUsed).toBe(2);
    expect(weightedFreezeDates(near.slice(1, 2))).toBeUndefined();
    expect(weightedFreezeDates([])).toBeUndefined();
  });
});
