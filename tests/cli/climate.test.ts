import { expect, test } from 'vitest';
import { z } from 'zod';
import { climateLines } from '../../src/cli/text/climate-text.ts';
import type { Climate } from '../../src/climate/climate.ts';
import { withWeather } from '../../src/climate/logged.ts';
import { eachDay } from '../../src/measures/days.ts';
import { garden, milwaukee } from '../practices/gardens.ts';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

const given = {
  early: z.iso.date().optional(),
  median: z.iso.date().optional(),
  late: z.iso.date().optional(),
  shareOfYears: z.number(),
  years: z.number(),
};
const odds = z.strictObject({ ...given, thisSeason: z.strictObject(given).optional() });

/** The shape docs/commands.md promises, written out anew. */
const climateOutput = z.strictObject({
  garden: z.string(),
  today: z.iso.date(),
  basis: z.enum(['daily-record', 'station', 'weighted-stations', 'monthly-normals', 'frost-dates']),
  origin: z.string(),
  confidence: z.enum(['recorded', 'modelled', 'derived', 'assumed']),
  season: z.number(),
  freezes: z.array(z.strictObject({ limitF: z.number(), limitC: z.number(), lastSpring: odds, firstAutumn: odds })),
  zone: z.strictObject({ zone: z.string(), meanYearlyMinimumC: z.number(), winters: z.number() }).optional(),
  zoneStated: z.string().optional(),
  notes: z.array(z.string()),
});

const climateOf = async (text: string, ...argv: string[]) => {
  const { loamtide } = await withGarden(text);
  return climateOutput.parse(JSON.parse((await loamtide('climate', '--format', 'json', ...argv)).out));
};

test('three limits, warmest first, each with its odds in the season of today', async () => {
  const climate = await climateOf(SMALL_GARDEN);
  expect(climate).toMatchObject({ garden: 'hollow-lane', basis: 'frost-dates', season: 2027, confidence: 'assumed' });
  expect(climate.freezes.map(({ limitF, limitC }) => [limitF, limitC])).toEqual([
    [32, 0],
    [28, -2.2],
    [24, -4.4],
  ]);
  expect(climate.freezes[0]?.lastSpring.median).toBe('2027-05-10');
  expect(climate.freezes[0]?.firstAutumn.median).toBe('2027-09-28');
});

test('a colder limit is passed earlier in spring and later in autumn', async () => {
  const { freezes } = await climateOf(SMALL_GARDEN);
  const springs = freezes.map(({ lastSpring }) => lastSpring.median ?? '');
  const autumns = freezes.map(({ firstAutumn }) => firstAutumn.median ?? '');
  expect([...springs].sort().reverse()).toEqual(springs);
  expect([...autumns].sort()).toEqual(autumns);
});

test('a freeze of this spring is told beside what is usual, which stays as it was', () => {
  const today = '2027-05-25';
  const weather = eachDay('2027-04-01', today).map((day) => ({
    kind: 'observed' as const,
    day,
    tminC: day === '2027-05-02' ? -1 : 6,
    tmaxC: 14,
  }));
  const told = (climate: Climate) => ({ garden: garden(), climate, plan: { today } });
  const [usual, now] = [told(milwaukee), told(withWeather(milwaukee, weather, today))];
  const springOf = (text: string[]) =>
    text.slice(text.indexOf('Last freeze of spring'), text.indexOf('First freeze of autumn'));
  const [before, after] = [springOf(climateLines(usual)), springOf(climateLines(now))];
  expect(after.slice(0, 5)).toEqual(before.slice(0, 5));
  expect(after.join(' ')).toMatch(/This season, by its own weather: 0 °C: 2 May;/);
  expect(before.join(' ')).not.toContain('This season');
});

test('south of the equator the season is named by the year it starts in, at midwinter', async () => {
  const southern = SMALL_GARDEN.replace('latitude: 44.5', 'latitude: -44.5').replace(
    'lastSpring: "05-10", firstAutumn: "09-28"',
    'lastSpring: "10-20", firstAutumn: "04-15"',
  );
  const { season, freezes } = await climateOf(southern);
  expect(season).toBe(2026);
  expect(freezes[0]?.lastSpring.median).toBe('2026-10-20');
  expect(freezes[0]?.firstAutumn.median).toBe('2027-04-15');
});

test('as text it is a table of days in the reader’s units, with where it comes from and what to know', async () => {
  const { loamtide } = await withGarden(SMALL_GARDEN.replace('units: us', 'units: us\n  hardinessZone: "4b"'));
  const { code, out } = await loamtide('climate');
  expect(code).toBe(0);
  expect(out).toMatch(/^Freeze dates given for the garden\.$/m);
  expect(out).toMatch(/^ {2}32 °F {8}April \d+ +May 10 +May \d+$/m);
  expect(out).toContain('The garden file says 4b.');
  expect(out).toContain('What to know');
  expect(out).not.toMatch(/[⟦⟧]/);
});

test('a climate without a freeze date says so instead of inventing one', async () => {
  const warm = Array.from({ length: 12 }, () => '{ highC: 30, lowC: 20, precipMm: 50 }').join(', ');
  const tropical = SMALL_GARDEN.replace(/frostDates: .*/, `monthlyNormals: [${warm}]`);
  const { loamtide } = await withGarden(tropical);
  expect((await loamtide('climate')).out).toMatch(/32 °F {8}no date +no date +no date/);
  const { freezes } = climateOutput.parse(JSON.parse((await loamtide('climate', '--format', 'json')).out));
  expect(freezes[0]?.lastSpring).toEqual({ shareOfYears: 0, years: 0 });
});
