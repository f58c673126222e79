import { describe, expect, test } from 'vitest';
import { readPlace } from '../../src/measures/typed-place.ts';

const MADISON = { latitude: 43.07306, longitude: -89.40123 };

describe('a place in two fields', () => {
  test.each([
    ['43.07306', '-89.40123'],
    ['43,07306', '-89,40123'],
    ['+43.07306', '−89.40123'],
    ['43.07306 N', '89.40123 W'],
    ['N43.07306°', 'W89.40123°'],
    ['43.07306° north', '89.40123° west'],
    ['89.40123 W', '43.07306 N'],
  ])('%s and %s', (latitude, longitude) => {
    expect(readPlace(latitude, longitude)).toEqual(MADISON);
  });

  test.each([
    [`43°4'23"N`, `89°24'4.4"W`],
    ['43° 4′ 23″ N', '89° 24′ 4,4″ W'],
    ['43 4 23', '-89 24 4.4'],
    ['N 43 4 23', 'W 89 24 4.4'],
    ["43º04’23''N", "89º24’04.4''W"],
  ])('in degrees, minutes and seconds: %s and %s', (latitude, longitude) => {
    expect(readPlace(latitude, longitude)).toEqual({ latitude: 43.07306, longitude: -89.40122 });
  });

  test('in degrees and minutes, south and east', () => {
    expect(readPlace("43° 31.5' S", "172° 38.25' E")).toEqual({ latitude: -43.525, longitude: 172.6375 });
    expect(readPlace('-43 31.5', '172 38.25')).toEqual({ latitude: -43.525, longitude: 172.6375 });
  });
});

describe('a pair pasted into the first field', () => {
  test.each([
    '43.07306, -89.40123',
    '43.07306,-89.40123',
    '43.07306 -89.40123',
    '43,07306 -89,40123',
    '43,07306; -89,40123',
    '43,07306, -89,40123',
    '(43.07306, -89.40123)',
    'geo:43.07306,-89.40123',
    'lat: 43.07306, lon: -89.40123',
    '43.07306 N, 89.40123 W',
    '43.07306N 89.40123W',
    'N 43.07306 W 89.40123',
    '43.07306°, -89.40123°',
    'Latitude 43.07306 Longitude -89.40123',
    '89.40123° W, 43.07306° N',
  ])('%s', (pasted) => {
    expect(readPlace(pasted, '')).toEqual(MADISON);
  });

  test.each([`43°4'23"N 89°24'4"W`, `43°4'23", -89°24'4"`, '43 4 23 N, 89 24 4 W', '43 4 23 -89 24 4'])(
    '%s',
    (pasted) => {
      expect(readPlace(pasted, '')).toEqual({ latitude: 43.07306, longitude: -89.40111 });
    },
  );

  test('the poles and both sides of the date line are places', () => {
    expect(readPlace('-90, 180', '')).toEqual({ latitude: -90, longitude: 180 });
    expect(readPlace('0 0', '')).toEqual({ latitude: 0, longitude: 0 });
  });
});

describe('what is no place', () => {
  test.each([
    ['', '', ['latitude', 'longitude']],
    ['43.1', '', ['longitude']],
    ['91', '-89', ['latitude']],
    ['43', '-181', ['longitude']],
    ['43 61 0', '-89', ['latitude']],
    ['43.5 30', '-89', ['latitude']],
    ['by the river', '-89', ['latitude']],
    ['43 N', '44 N', ['longitude']],
    ['43 N 89', '', ['latitude', 'longitude']],
    ['9'.repeat(500), '1', ['latitude']],
  ] as const)('"%s" and "%s" names what is wrong', (latitude, longitude, wrong) => {
    expect(readPlace(latitude, longitude)).toEqual({ wrong });
  });
});
