import { expect, it } from 'vitest';
import { NO_FREEZES, statedFreezes, usuallySpread } from '../../src/climate/stated-freezes.ts';

const MONTHLY = [-10, -5, 0, 5, 10, 15, 20, 15, 10, 5, 0, -5];
const course = { tminC: MONTHLY, turn: '01-01' } as const;
const known = {
  'last-spring': { median: 120, spreadBeforeDays: 9, spreadAfterDays: 7 },
  'first-autumn': { median: 275, spreadBeforeDays: 6, spreadAfterDays: 8 },
};
const plain = { tempOffsetC: 0, frostOffsetDays: 0 };

function medians(site = plain) {
  const freezes = statedFreezes(known, course, site);
  return ([32, 28, 24] as const).flatMap((limitF) =>
    (['last-spring', 'first-autumn'] as const).map((event) => {
      const dates = freezes[limitF][event];
      return dates.kind === 'stated' ? dates.median : Number.NaN;
    }),
  );
}

it('keeps the known dates and puts colder freezes outside them, in order', () => {
  const [spring32 = 0, autumn32 = 0, spring28 = 0, autumn28 = 0, spring24 = 0, autumn24 = 0] = medians();
  expect([spring32, autumn32]).toEqual([120, 275]);
  expect(spring24).toBeLessThan(spring28);
  expect(spring28).toBeLessThan(spring32);
  expect(autumn24).toBeGreaterThan(autumn28);
  expect(autumn28).toBeGreaterThan(autumn32);
});

it('keeps the spread of the known date at every limit', () => {
  expect(statedFreezes(known, course, plain)[24]['first-autumn']).toMatchObject({
    spreadBeforeDays: 6,
    spreadAfterDays: 8,
  });
});

it('shortens the season at both ends by the garden’s days', () => {
  expect(medians({ ...plain, frostOffsetDays: 5 }).slice(0, 2)).toEqual([125, 270]);
  expect(medians({ ...plain, frostOffsetDays: -5 }).slice(0, 2)).toEqual([115, 280]);
});

it('shortens the season of a cold pocket and lengthens that of a warm wall', () => {
  const [coldSpring = 0, coldAutumn = 0] = medians({ ...plain, tempOffsetC: -1 });
  const [warmSpring = 0, warmAutumn = 0] = medians({ ...plain, tempOffsetC: 1 });
  // One degree is 30.5/5 = 6.1 days on these slopes.
  expect(coldSpring - 120).toBeCloseTo(6.1, 0);
  expect(275 - coldAutumn).toBeCloseTo(6.1, 0);
  expect(120 - warmSpring).toBeCloseTo(6.1, 0);
  expect(warmAutumn - 275).toBeCloseTo(6.1, 0);
});

it('gives no date for a freeze harder than winter is', () => {
  const mild = { tminC: MONTHLY.map((tempC) => Math.max(tempC, 4)), turn: '01-01' } as const;
  const freezes = statedFreezes(known, mild, plain);
  expect(freezes[32]['last-spring']).toMatchObject({ kind: 'stated', median: 120 });
  expect(freezes[24]['last-spring']).toEqual({ kind: 'none' });
});

it('spreads a date without published spread as stations usually do', () => {
  expect(usuallySpread('last-spring', 120)).toEqual({ median: 120, spreadBeforeDays: 10.9, spreadAfterDays: 10.9 });
  expect(usuallySpread('first-autumn', 270)).toEqual({ median: 270, spreadBeforeDays: 10.1, spreadAfterDays: 10.1 });
});

it('knows a place without freeze dates', () => {
  expect(NO_FREEZES[28]).toEqual({ 'last-spring': { kind: 'none' }, 'first-autumn': { kind: 'none' } });
});
