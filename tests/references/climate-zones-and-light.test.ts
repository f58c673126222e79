/**
 * Hardiness zones, sun tables and the ten-hour day against published figures.
 */
import { describe, expect, it } from 'vitest';
import { daylight } from '../../src/climate/daylight.ts';
import { hardinessZoneOf } from '../../src/climate/zones.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import { celsius } from '../../src/measures/units.ts';
import { recordClimate } from '../climate/real-data.ts';

describe('hardiness zones (USDA-ARS map, agro:S49–S52)', () => {
  const names = Array.from({ length: 13 }, (_, i) => [`${i + 1}a`, `${i + 1}b`]).flat();

  it('are 26 halves of 5 °F from −60 °F, the lower edge belonging to each', () => {
    const lowerEdgesF = names.map((_, i) => -60 + 5 * i);
    expect(lowerEdgesF.map((edgeF) => hardinessZoneOf(celsius(edgeF)))).toEqual(names);
    expect(lowerEdgesF.map((edgeF) => hardinessZoneOf(celsius(edgeF + 4.99)))).toEqual(names);
  });

  it.each([
    [-7.2, '6a'],
    [-20, '5a'],
    [-0.1, '6b'],
    [0, '7a'],
    [-12.5, '5b'],
    [69.9, '13b'],
  ])('%d °F is zone %s', (meanF, zone) => {
    expect(hardinessZoneOf(celsius(meanF))).toBe(zone);
  });

  it('puts Milwaukee in 6a and Bozeman in 5a or beside it, 1991–2020', () => {
    // The records' own arithmetic: the map draws them so as well, as far as remembered, not read.
    expect(recordClimate('milwaukee', 2020).zone).toMatchObject({ zone: '6a', winters: 30 });
    const bozeman = recordClimate('bozeman', 2020).zone;
    expect(bozeman?.zone).toBe('5a');
    expect(bozeman?.winters).toBeGreaterThanOrEqual(25);
  });
});

/** Minutes between an instant and a local standard time on a day, 7 h behind UTC. */
function minutesOff(instant: string | undefined, day: Day, localTime: string): number {
  return Math.abs(Date.parse(instant ?? '') - Date.parse(`${day}T${localTime}-07:00`)) / 60_000;
}

describe('sunrise and sunset within 3 minutes', () => {
  // NREL Solar Position Algorithm (first two) and US Naval Observatory, as quoted in pvlib’s tests (agro:S47).
  it.each([
    [39.742476, -105.1786, '2015-01-02', '07:21:55', '16:47:43'],
    [39.742476, -105.1786, '2015-08-02', '05:00:27', '19:13:58'],
    [39, -105, '2015-01-02', '07:19:00', '16:49:00'],
    [39, -105, '2015-04-02', '05:43:00', '18:24:00'],
    [39, -105, '2015-08-02', '05:01:00', '19:10:00'],
    [39, -105, '2015-12-02', '07:01:00', '16:38:00'],
  ])('%d, %d on %s: %s and %s', (latitude, longitude, day, sunrise, sunset) => {
    const light = daylight(latitude, longitude, day);
    expect(minutesOff(light.sunrise, day, sunrise)).toBeLessThan(3);
    expect(minutesOff(light.sunset, day, sunset)).toBeLessThan(3);
  });

  it.each([
    ['2015-01-02', 9 + 25 / 60 + 48 / 3600],
    ['2015-08-02', 14 + 13 / 60 + 31 / 3600],
  ])('the day of %s is %d hours long (NREL)', (day, hours) => {
    expect(Math.abs(daylight(39.742476, -105.1786, day).hours - hours) * 60).toBeLessThan(3);
  });
});

describe('the ten-hour day', () => {
  /** First day from one on whose length is on the wanted side of ten hours. */
  const firstDay = (latitude: number, from: Day, shorter: boolean): Day => {
    let day = from;
    while (daylight(latitude, 0, day).hours < 10 !== shorter) day = addDays(day, 1);
    return day;
  };

  // Worked out once apart from this program with a formula up to 2.3 minutes off, which is a day of change at 40°; and
  // the years of a leap cycle differ by a day: 2 days.
  it.each([
    [40, '11-16', '01-29'],
    [45, '11-06', '02-07'],
    [50, '10-30', '02-14'],
    [55, '10-24', '02-20'],
    [60, '10-19', '02-25'],
  ])('at %d° N ends on %s and is back on %s', (latitude, ends, back) => {
    const days = (from: Day, to: Day) => (Date.parse(to) - Date.parse(from)) / 86_400_000;
    expect(Math.abs(days(`2025-${ends}`, firstDay(latitude, '2025-09-25', true)))).toBeLessThanOrEqual(2);
    expect(Math.abs(days(`2026-${back}`, firstDay(latitude, '2025-12-31', false)))).toBeLessThanOrEqual(2);
  });

  it('is longest at 15.62 and shortest at 8.77 hours at 45° N', () => {
    expect(daylight(45, 0, '2025-06-21').hours).toBeCloseTo(15.62, 1);
    expect(daylight(45, 0, '2025-12-21').hours).toBeCloseTo(8.77, 1);
  });
});
