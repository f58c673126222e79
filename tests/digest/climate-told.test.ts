/**
 * Figures of the climate page against ones counted apart.
 */
import { expect, test } from 'vitest';
import { climateFromFrostDates } from '../../src/climate/from-frost-dates.ts';
import { seasonsOfRows } from '../../src/climate/season-weather.ts';
import { freezeFree, lightTold, monthsTold } from '../../src/digest/climate-told.ts';
import { addDays, dayOf, eachDay } from '../../src/measures/days.ts';

const site = { latitude: 43, longitude: -89, frostOffsetDays: 0, tempOffsetC: 0 };
const assumed = climateFromFrostDates({ ...site, lastSpring: '05-06', firstAutumn: '10-04' });

/** Seasons with one last freeze in spring and one first in autumn, at the days given. */
function recordOf(freezes: readonly (readonly [string, string])[]) {
  const rows = freezes.flatMap(([spring, autumn], i) => {
    const year = 2001 + i;
    const [last, first] = [`${year}-${spring}`, `${year}-${autumn}`];
    return eachDay(dayOf(year, 1, 1), dayOf(year, 12, 31)).map((day) => ({
      day,
      tminC: day <= last || day >= first ? -5 : 8,
      tmaxC: 15,
    }));
  });
  return { ...assumed, basis: 'daily-record' as const, seasons: seasonsOfRows('01-01', rows, 0) };
}

test('the season without a freeze is counted in each year by itself', () => {
  // 100, 110 and 120 days from the day after the last to the day before the first freeze, counted on the calendar.
  const ends = [100, 110, 120].map((days) => addDays('2001-05-01', days + 1).slice(5));
  const climate = recordOf(ends.map((end) => ['05-01', end] as const));
  expect(freezeFree(climate, 2001)).toEqual({ short: 100, median: 110, long: 120, seasons: 3 });
  expect(freezeFree({ ...climate, frostOffsetDays: 5 }, 2001).median).toBe(100);
});

test('between two given dates lie the days after the one and before the other', () => {
  expect(freezeFree(assumed, 2027)).toEqual({ median: 150, seasons: 0 });
});

test('months come in the order of the season, January first in the north and July in the south', () => {
  expect(monthsTold(assumed, 2027).map(({ first }) => first)[0]).toBe('2027-01-01');
  const south = climateFromFrostDates({ ...site, latitude: -43, lastSpring: '10-06', firstAutumn: '04-20' });
  const months = monthsTold(south, 2027);
  expect(months.map(({ first }) => first)).toEqual(expect.arrayContaining(['2027-07-01', '2028-06-01']));
  const warmest = months.reduce((a, b) => (b.highC > a.highC ? b : a));
  expect(['2028-01-01', '2028-02-01']).toContain(warmest.first);
});

test('at 43° N days are shorter than ten hours from early November to early February', () => {
  // 9 h 59 min on 6 November and 5 February at 43° N: sun tables of common almanacs, from memory, to a few days.
  const light = lightTold(assumed, '2027-04-01');
  expect(light.longest.day.slice(0, 8)).toBe('2027-06-');
  expect(light.shortest.day.slice(0, 8)).toBe('2027-12-');
  expect(light.shortFrom).toMatch(/^2027-11-(0[1-9]|1[0-2])$/);
  expect(light.shortTo).toMatch(/^2028-0(1-(29|30|31)|2-(0\d|10))$/);
});

test('at the equator no day is short', () => {
  const light = lightTold({ ...assumed, latitude: 0.5 }, '2027-04-01');
  expect(light.shortFrom).toBeUndefined();
});
