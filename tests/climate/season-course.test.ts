import { describe, expect, test } from 'vitest';
import type { Climate } from '../../src/climate/climate.ts';
import { withWeather } from '../../src/climate/logged.ts';
import { fitCourse, snowCourse, temperatureCourse, topWaterCourse } from '../../src/climate/season-course.ts';
import type { SoilClass } from '../../src/climate/top-layer.ts';
import { layerWaterOf } from '../../src/climate/top-layer.ts';
import type { LoggedDay } from '../../src/garden/weather.ts';
import { soilTextures } from '../../src/handbook/soil-textures.ts';
import { addDays, type Day, eachDay } from '../../src/measures/days.ts';
import { inventedClimate, seasonOfTemps } from './invented.ts';

const [texture] = soilTextures.filter(({ id }) => id === 'loam');
if (texture === undefined) throw new Error('no loam');
const LOAM: SoilClass = { texture, raised: true };

/** Nine seasons, each a degree warmer than the one before: lowest 1 to 9 °C, highest ten more, all dry. */
function nineSeasons(parts: Partial<Climate> = {}, rainMm: number | 'unknown' = 0): Climate {
  const seasons = Array.from({ length: 9 }, (_, i) => ({
    ...seasonOfTemps(2001 + i, () => ({ tminC: i + 1, tmaxC: i + 11 })),
    rainMm: Array(365).fill(rainMm === 'unknown' ? undefined : rainMm),
  }));
  return inventedClimate({ seasons, ...parts });
}

const south: Partial<Climate> = { seasonTurn: '07-01', latitude: -45 };

function logged(from: Day, to: Day, row: Partial<LoggedDay> = {}): LoggedDay[] {
  return eachDay(from, to).map((day) => ({ kind: 'observed', day, tminC: 4, tmaxC: 14, rainMm: 0, ...row }));
}

describe('temperatures of a stretch of days', () => {
  test('lie between those of one and of nine seasons of ten', () => {
    const [day] = temperatureCourse(nineSeasons(), 'tminC', { from: '2027-05-12', to: '2027-05-12' });
    // Sixty-three values, seven of each degree: the 6.4th, 32nd and 57.6th.
    expect(day?.usual).toEqual({ low: 1, median: 5, high: 9 });
    expect(day?.normalC).toBeCloseTo(5);
  });

  test('are those seen up to today and those expected after it', () => {
    const weather = [
      ...logged('2027-05-10', '2027-05-12'),
      { kind: 'expected' as const, day: '2027-05-13', tmaxC: 20 },
    ];
    const climate = withWeather(nineSeasons(), weather, '2027-05-12');
    const days = temperatureCourse(climate, 'tmaxC', { from: '2027-05-11', to: '2027-05-14' });
    expect(days.map(({ seenC, expectedC }) => [seenC, expectedC])).toEqual([
      [14, undefined],
      [14, undefined],
      [undefined, 20],
      [undefined, undefined],
    ]);
  });

  test('have a mean and no band without a record', () => {
    const [day] = temperatureCourse(inventedClimate(), 'tmaxC', { from: '2028-02-29', to: '2028-02-29' });
    expect(day).toEqual({ day: '2028-02-29', normalC: 15 });
  });

  test.each([
    ['north', {}],
    ['south', south],
  ])('run over midwinter and a leap day in the %s', (_, parts) => {
    for (const [from, to] of [
      ['2027-12-29', '2028-03-02'],
      ['2028-06-28', '2028-07-03'],
    ] as const) {
      const days = temperatureCourse(nineSeasons(parts), 'tminC', { from, to });
      expect(days.map(({ day }) => day)).toEqual(eachDay(from, to));
      for (const { usual } of days) expect(usual?.median).toBe(5);
    }
  });
});

describe('snow and soil of a stretch of days', () => {
  const today = '2027-05-12';
  const span = { from: addDays(today, -3), to: addDays(today, 3) };

  test('show this season only where something of it was logged', () => {
    const [day] = snowCourse(nineSeasons(), span);
    expect(day).toEqual({ day: span.from, usual: { low: 0, median: 0, high: 0 } });
  });

  test('show a snowfall that was logged, and past years without it', () => {
    const fallen = logged('2027-05-01', today, { tminC: -6, tmaxC: -2 }).map((row) =>
      row.day === today ? { ...row, newSnowMm: 130, rainMm: 10 } : row,
    );
    const days = snowCourse(withWeather(nineSeasons(), fallen, today), span);
    // Ten millimetres of water lie about three times as deep.
    expect(days.map(({ now }) => now?.median)).toEqual([0, 0, 0, 3, expect.any(Number), 0, 0]);
    for (const { usual } of days) expect(usual?.high).toBe(0);
  });

  test('a soaking fills the top soil of this season, and it is not fit until it has dried', () => {
    const soaked = [...logged('2027-05-01', '2027-05-11'), ...logged(today, today, { rainMm: 60 })];
    const climate = withWeather(nineSeasons(), soaked, today);
    const water = topWaterCourse(climate, LOAM, span);
    const fit = fitCourse(climate, LOAM, span);
    expect(water[3]?.now?.median).toBeLessThanOrEqual(0);
    expect(water[3]?.usual?.median).toBeGreaterThan(layerWaterOf(LOAM).fitMm);
    expect(fit.map(({ now }) => now)).toEqual([1, 1, 1, 0, expect.any(Number), expect.any(Number), 1]);
    for (const { usual } of fit) expect(usual).toBe(1);
  });

  test.each([
    ['no seasons', inventedClimate()],
    ['no rain in its record', nineSeasons({}, 'unknown')],
  ])('are not told with %s', (_, climate) => {
    expect(snowCourse(climate, span)).toEqual([]);
    expect(topWaterCourse(climate, LOAM, span)).toEqual([]);
    expect(fitCourse(climate, LOAM, span)).toEqual([]);
  });

  test('run over midwinter and a leap day in the south', () => {
    const from = '2028-02-27';
    const climate = withWeather(nineSeasons(south), logged('2028-02-20', from), from);
    expect(fitCourse(climate, LOAM, { from, to: '2028-03-01' }).map(({ day }) => day)).toContain('2028-02-29');
    const over = fitCourse(climate, LOAM, { from: '2028-06-29', to: '2028-07-02' });
    // The oldest season has none before it: its first days stand at field capacity.
    expect(over.map(({ usual }) => usual)).toEqual([1, 1, 8 / 9, 8 / 9]);
    expect(over.map(({ now }) => now)).toEqual(over.map(({ usual }) => usual));
  });
});
