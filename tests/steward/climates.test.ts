import { describe, expect, it } from 'vitest';
import { addDays, dayParts, eachDay } from '../../src/measures/days.ts';
import type { WeatherRecord } from '../../src/store/weather.ts';
import { northernFile, type Sections, southernFile } from './gardens.ts';
import { emptyHousehold, household, openTask } from './household.ts';

/** Twelve invented months of a cold place, and the same half a year on. */
const MONTHS = [-4, -2, 4, 12, 19, 25, 28, 27, 22, 14, 6, -2].map((highC) => ({
  highC,
  lowC: highC - 10,
  precipMm: 70,
}));
const SOUTHERN_MONTHS = [...MONTHS.slice(6), ...MONTHS.slice(0, 6)].map(({ highC, ...month }) => ({
  ...month,
  highC: highC - 2,
}));

/** An invented record: a plain wave through the year, a little colder every other year. */
function record(from: string, to: string, southern = false): WeatherRecord {
  const days = eachDay(from, to).map((day) => {
    const { year, month, dayOfMonth } = dayParts(day);
    const ofYear = (month - 1) * 30.4 + dayOfMonth + (southern ? 182 : 0);
    const meanC = 8 - 15 * Math.cos(((ofYear - 20) / 365) * 2 * Math.PI) - (year % 2);
    return { day, tminC: Math.round((meanC - 5) * 10) / 10, tmaxC: Math.round((meanC + 5) * 10) / 10, rainMm: 2 };
  });
  return { origin: 'Invented for a test.', leftOut: [], days };
}

describe('a garden plans by', () => {
  it.each<[string, Sections, string]>([
    ['two frost dates', { frostDates: { lastSpring: '05-10', firstAutumn: '09-28' } }, 'frost-dates'],
    ['a station', { station: 'USW00014839' }, 'station'],
    ['the nearest stations', { nearest: true }, 'weighted-stations'],
    ['monthly normals', { monthlyNormals: MONTHS }, 'monthly-normals'],
  ])('%s', async (_, climate, basis) => {
    const { steward } = await emptyHousehold();
    const plan = await steward.importGarden({ file: northernFile({ climate }), prefer: 'reported' }, 'ada');
    const view = await steward.view(plan.gardenId);
    expect(view.climate.basis).toBe(basis);
    expect(plan.entries.length).toBeGreaterThan(5);
  });

  it('a daily record', async () => {
    const { steward } = await emptyHousehold();
    const file = northernFile({ climate: { dailyRecord: 'weather.csv' } });
    const days = record('2012-01-01', '2026-12-31');
    const plan = await steward.importGarden({ file, prefer: 'reported', record: days }, 'ada');
    const { climate } = await steward.view(plan.gardenId);
    expect([climate.basis, climate.seasons.length]).toEqual(['daily-record', 15]);
    expect(plan.entries.length).toBeGreaterThan(5);
  });

  it.each<[string, Sections]>([
    ['two frost dates', { frostDates: { lastSpring: '11-01', firstAutumn: '04-10' } }],
    ['monthly normals', { monthlyNormals: SOUTHERN_MONTHS }],
    ['a daily record', { dailyRecord: 'weather.csv' }],
  ])('%s in the south', async (_, climate) => {
    const { steward } = await emptyHousehold('2027-10-19T20:00:00.000Z');
    const days = record('2012-07-01', '2027-06-30', true);
    const bring = { file: southernFile({ climate }), prefer: 'reported' as const };
    const plan = await steward.importGarden('dailyRecord' in climate ? { ...bring, record: days } : bring, 'ada');
    expect((await steward.view(plan.gardenId)).climate.seasonTurn).toBe('07-01');
    expect(plan.entries.length).toBeGreaterThan(3);
  });
});

it('weather that did not change leaves the climate as it was worked out', async () => {
  const { steward, garden } = await household();
  const days = [{ day: '2027-04-18', kind: 'observed' as const, tminC: -3, tmaxC: 11, rainMm: 2 }];
  await steward.report(garden, { kind: 'weather-logged', days }, 'ada');
  const before = await steward.view(garden);
  await steward.skip(garden, [openTask(before.plan, 'clear-bed').key], 'ada');
  expect((await steward.view(garden)).climate).toBe(before.climate);
  await steward.report(garden, { kind: 'weather-logged', days: days.map((row) => ({ ...row, rainMm: 9 })) }, 'ada');
  expect((await steward.view(garden)).climate).not.toBe(before.climate);
});

describe('a record', () => {
  it('that is brought in anew makes the plan again', async () => {
    const { steward, clock } = await emptyHousehold();
    const file = northernFile({ climate: { dailyRecord: 'weather.csv' } });
    const first = record('2012-01-01', '2026-12-31');
    const { gardenId, factsVersion } = await steward.importGarden({ file, prefer: 'reported', record: first }, 'ada');
    clock.moment = '2027-04-20T14:00:00.000Z';
    const colder = first.days.map((row) => ({ ...row, tminC: (row.tminC ?? 0) - 4, tmaxC: (row.tmaxC ?? 0) - 4 }));
    const plan = await steward.importWeather(gardenId, { ...first, days: colder });
    expect(plan.factsVersion).toBe(factsVersion + 1);
    expect(plan.changes.map(({ kind }) => kind)).toContain('moved');
  });

  it('that is too short is refused, and the one there stays', async () => {
    const { steward } = await emptyHousehold();
    const file = northernFile({ climate: { dailyRecord: 'weather.csv' } });
    const good = record('2012-01-01', '2026-12-31');
    const { gardenId } = await steward.importGarden({ file, prefer: 'reported', record: good }, 'ada');
    const before = await steward.view(gardenId);
    const short = { ...good, days: good.days.filter(({ day }) => day >= addDays('2026-12-31', -900)) };
    await expect(steward.importWeather(gardenId, short)).rejects.toThrow('too short');
    expect(await steward.view(gardenId)).toEqual(before);
  });

  it('is refused for a garden that is not there', async () => {
    const { steward } = await emptyHousehold();
    const good = record('2012-01-01', '2026-12-31');
    await expect(steward.importWeather('nowhere', good)).rejects.toThrow('nowhere: is not a garden here.');
  });
});
