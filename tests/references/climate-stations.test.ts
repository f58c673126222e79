/**
 * The station table against look-ups made apart from this program, and how good its neighbours are.
 */
import { describe, expect, it } from 'vitest';
import { freezeDay } from '../../src/climate/freeze.ts';
import { climateFromStation, climateFromStations } from '../../src/climate/from-station.ts';
import { nearestStations, stationFreezes, weightedFreezes } from '../../src/climate/stations.ts';
import { allStations, NO_OFFSETS, stationById } from '../climate/real-data.ts';

const stations = allStations();

describe('the nearest stations', () => {
  // Worked out once apart from this program.
  it('of 43.07, -89.40 are three around Madison, Wisconsin', () => {
    const near = nearestStations(stations, { latitude: 43.07, longitude: -89.4 }, 3);
    expect(near.map(({ station }) => [station.id, station.lastSpringP50])).toEqual([
      ['USC00471416', '04-22'],
      ['USW00014837', '05-02'],
      ['USC00470308', '05-11'],
    ]);
    expect(near.map(({ distanceKm }) => distanceKm.toFixed(1))).toEqual(['6.8', '9.0', '26.3']);
  });

  it.each([
    [44.48, -73.21, 'USW00014742', 4.9, '05-04'],
    [45.68, -111.04, 'USC00241044', 2.0, '05-31'],
    [47.66, -92.2, 'USC00212576', 0.4, undefined],
  ])('of %d, %d is %s, %d km off', (latitude, longitude, id, distanceKm, lastSpring) => {
    const [nearest] = nearestStations(stations, { latitude, longitude }, 1);
    expect(nearest?.station.id).toBe(id);
    expect(nearest?.distanceKm).toBeCloseTo(distanceKm, 1);
    expect(nearest?.station.lastSpringP50).toBe(lastSpring);
  });
});

it('gives no date at Embarrass, Minnesota, where a freeze can come in any month', () => {
  // The nearest station with dates is 33 km off and has a season of 132 days; here half of years have 61.
  const place = { latitude: 47.66, longitude: -92.2, ...NO_OFFSETS };
  const climate = climateFromStations(nearestStations(stations, place, 6), place);
  expect(climate.freezes[32]['last-spring']).toEqual({ kind: 'none' });
  expect(climate.notes.join(' ')).toContain('half of years have 61 days without one');
});

it('gives every dated station its own published dates back', () => {
  const north = stations.filter((station) => stationFreezes(station) && station.latitude >= 40);
  for (const station of north.filter((_, i) => i % 25 === 0)) {
    const climate = climateFromStation(station, { ...station, ...NO_OFFSETS });
    const date = (event: 'last-spring' | 'first-autumn', chancePercent: number) =>
      freezeDay(climate, { event, limitF: 32, season: 2001, chancePercent })?.slice(5);
    expect([date('last-spring', 50), date('last-spring', 90)]).toEqual([station.lastSpringP50, station.lastSpringP90]);
    expect([date('first-autumn', 50), date('first-autumn', 90)]).toEqual([station.firstFallP50, station.firstFallP90]);
  }
});

describe('how good six neighbours are', () => {
  // Every tenth dated station north of 40° N outside Alaska, its date worked out from six others.
  const dated = stations.filter((station) => stationFreezes(station));
  const asked = dated.filter(({ latitude, state }) => latitude >= 40 && state !== 'AK').filter((_, i) => i % 10 === 0);
  const misses = asked.map((station) => {
    const others = dated.filter((other) => other !== station);
    const near = nearestStations(others, station, 6);
    const [own, six] = [stationFreezes(station), weightedFreezes(near)];
    const alone = near[0] && stationFreezes(near[0].station);
    if (!own || !six || !alone) throw new Error(`No dates for ${station.id}.`);
    return {
      spring: Math.abs(six.springP50 - own.springP50),
      autumn: Math.abs(six.autumnP50 - own.autumnP50),
      alone: Math.abs(alone.springP50 - own.springP50),
    };
  });
  const meanOf = (which: 'spring' | 'autumn' | 'alone') =>
    misses.reduce((sum, miss) => sum + miss[which], 0) / misses.length;

  it('is 5.4 days in spring and 5.1 in autumn, over all such stations', () => {
    // Over 2,387 stations, worked out apart from this program. A tenth of them, each off by 5 ± 5 days, tells their mean
    // to ± 0.35: 0.8 is more than two of that.
    expect(misses.length).toBeGreaterThan(200);
    expect(Math.abs(meanOf('spring') - 5.4)).toBeLessThan(0.8);
    expect(Math.abs(meanOf('autumn') - 5.1)).toBeLessThan(0.8);
  });

  it('is better than the nearest alone', () => {
    expect(meanOf('spring')).toBeLessThan(meanOf('alone'));
  });
});

it('has the published normals of Milwaukee and Bozeman (NOAA NCEI, mly-tmin-normal)', () => {
  expect(stationById('USW00014839').normals.tminC[0]).toBe(-9.1);
  expect(stationById('USC00241044').normals.tmaxC[6]).toBe(28.6);
});
