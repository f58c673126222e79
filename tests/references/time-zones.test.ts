/**
 * The zone of a place against cities whose clocks are known, and every zone there is against this computer's own table.
 */
import { IANAZone } from 'luxon';
import { describe, expect, it } from 'vitest';
import { zoneAt } from '../../src/garden/time-zone.ts';

// Zones by the IANA time zone database's own comments; places of cities from memory, to a hundredth of a degree.
const CITIES: readonly [string, number, number, string][] = [
  ['Chicago', 41.88, -87.63, 'America/Chicago'],
  ['New York', 40.71, -74.01, 'America/New_York'],
  ['Denver', 39.74, -104.99, 'America/Denver'],
  ['Phoenix, whose clocks stay', 33.45, -112.07, 'America/Phoenix'],
  ['Seattle', 47.61, -122.33, 'America/Los_Angeles'],
  ['Anchorage', 61.22, -149.9, 'America/Anchorage'],
  ['Honolulu', 21.31, -157.86, 'Pacific/Honolulu'],
  ["St. John's, on the half hour", 47.56, -52.71, 'America/St_Johns'],
  ['London', 51.51, -0.13, 'Europe/London'],
  ['Berlin', 52.52, 13.4, 'Europe/Berlin'],
  ['Tromsø, inside the polar circle', 69.65, 18.96, 'Europe/Oslo'],
  ['Kathmandu, on the quarter hour', 27.72, 85.32, 'Asia/Kathmandu'],
  ['Sapporo', 43.06, 141.35, 'Asia/Tokyo'],
  ['Hobart', -42.88, 147.33, 'Australia/Hobart'],
  ['Christchurch', -43.53, 172.64, 'Pacific/Auckland'],
  ['Santiago', -33.45, -70.67, 'America/Santiago'],
  ['Cape Town', -33.92, 18.42, 'Africa/Johannesburg'],
];

describe('the time zone of a place', () => {
  it.each(CITIES)('of %s', (_, latitude, longitude, zone) => {
    // Oslo keeps the time of Berlin since 1970, and newer tables call it so.
    const asKnown = zone === 'Europe/Oslo' ? ['Europe/Oslo', 'Europe/Berlin'] : [zone];
    expect(asKnown).toContain(zoneAt({ latitude, longitude }));
  });

  it('at sea is that of the hour, fifteen degrees each', () => {
    expect(zoneAt({ latitude: 30, longitude: -45 })).toBe('Etc/GMT+3');
    expect(zoneAt({ latitude: -40, longitude: 90 })).toBe('Etc/GMT-6');
  });

  it('near a border can be the neighbour’s, which is why it may be overruled', () => {
    // Ushuaia lies in Argentina, a few kilometres from Chile; both keep the same hour.
    expect(zoneAt({ latitude: -54.8, longitude: -68.3 })).toBe('America/Punta_Arenas');
  });

  it('is one this computer knows, wherever one stands', () => {
    const places = Array.from({ length: 13 }, (_, i) => -90 + 15 * i).flatMap((latitude) =>
      Array.from({ length: 25 }, (_, i) => ({ latitude, longitude: -180 + 15 * i })),
    );
    const unknown = places.filter((place) => !IANAZone.isValidZone(zoneAt(place) ?? 'none'));
    expect(unknown).toEqual([]);
  });
});
