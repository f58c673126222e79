import { expect, test } from 'vitest';
import { yearSeasons, yearSpan } from '../../src/digest/year-span.ts';
import { addDays, daysBetween } from '../../src/measures/days.ts';

test('eighteen months are six whole seasons, begun with that of a month ago', () => {
  expect(yearSpan('2026-09-20')).toEqual({ from: '2026-06-01', to: '2027-11-30' });
  expect(yearSeasons('01-01', '2026-09-20').map(({ name }) => name)).toEqual([
    'Summer 2026',
    'Autumn 2026',
    'Winter 2026/27',
    'Spring 2027',
    'Summer 2027',
    'Autumn 2027',
  ]);
});

test('in the south the same months are the other half of the year', () => {
  expect(yearSeasons('07-01', '2026-09-20').map(({ word }) => word)).toEqual([
    'winter-2026',
    'spring-2026',
    'summer-2026',
    'autumn-2027',
    'winter-2027',
    'spring-2027',
  ]);
});

test('each season begins the day after the one before it, over New Year and 29 February', () => {
  for (const today of ['2027-12-31', '2028-01-01', '2028-02-29', '2028-03-31']) {
    const seasons = yearSeasons('01-01', today);
    const { from, to } = yearSpan(today);
    expect([seasons[0]?.from, seasons.at(-1)?.to]).toEqual([from, to]);
    for (const [i, season] of seasons.slice(1).entries()) expect(season.from).toBe(addDays(seasons[i]?.to ?? '', 1));
    expect(daysBetween(from, today)).toBeGreaterThanOrEqual(30);
    expect(daysBetween(today, to)).toBeGreaterThan(396);
  }
});
