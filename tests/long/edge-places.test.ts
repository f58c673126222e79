/**
 * Every saved place at an edge, and places and days drawn by chance: each planned, and every page of it looked over.
 */
import fc from 'fast-check';
import { IANAZone } from 'luxon';
import { expect, test } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { amissAt, EDGES, type EdgePlace, months } from '../fuzz/places.ts';

test.each(Object.entries(EDGES))('%s: planned in words, or refused in words', async (name, place) => {
  const { amiss, refused } = await amissAt(place);
  expect(amiss).toEqual([]);
  if (refused !== undefined) console.log(`${name}: ${refused}`);
  expect(refused).not.toBe('');
});

const ZONES = Intl.supportedValuesOf('timeZone').filter((zone) => IANAZone.isValidZone(zone));
const twoDigits = (n: number) => String(n).padStart(2, '0');
const monthDay = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([month, day]) => `${twoDigits(month)}-${twoDigits(day)}`);
const climates = fc.oneof(
  fc.constant({ nearest: true }),
  fc.tuple(monthDay, monthDay).map(([lastSpring, firstAutumn]) => ({ frostDates: { lastSpring, firstAutumn } })),
  fc
    .tuple(fc.integer({ min: -40, max: 25 }), fc.integer({ min: 0, max: 25 }), fc.constantFrom(0 as const, 6 as const))
    .map(([cold, more, warmest]) => months(cold, Math.min(30, cold + more), warmest)),
);
const places: fc.Arbitrary<EdgePlace> = fc.record({
  latitude: fc.integer({ min: -900, max: 900 }).map((tenths) => tenths / 10),
  longitude: fc.integer({ min: -1800, max: 1800 }).map((tenths) => tenths / 10),
  timeZone: fc.constantFrom(...ZONES),
  climate: climates,
  today: fc.integer({ min: 0, max: 1500 }).map((days) => addDays('2026-12-01', days)),
});

test('places and days drawn by chance', async () => {
  const seed = Number(process.env.LOAMTIDE_FUZZ_SEED ?? Date.now() % 1_000_000);
  console.log(`Places are drawn by the seed ${seed}: LOAMTIDE_FUZZ_SEED=${seed}`);
  const found: string[] = [];
  for (const place of fc.sample(places, { seed, numRuns: 60 })) {
    const { amiss } = await amissAt(place).catch((error: unknown) => ({ amiss: [String((error as Error).stack)] }));
    found.push(...amiss.map((one) => `${JSON.stringify(place).slice(0, 300)}: ${one}`));
  }
  expect(found).toEqual([]);
}, 600_000);
