import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import { freezeDay } from '../../../src/climate/freeze.ts';
import type { Garden } from '../../../src/garden/garden.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { draftsIn, frostDates, garden, milwaukee, setOut, sown } from '../gardens.ts';
import { climate, expected, measured, september, watched } from './gardens.ts';

function watchOf(of: Garden, key: string, over: Climate = climate, today = of.startedOn) {
  return watched(of, over, today).find((draft) => draft.key === key);
}

const spring = (plantings: Garden['plantings'], parts = {}) => garden({ startedOn: '2027-03-01', plantings, ...parts });

describe('the watch of spring', () => {
  const tomatoes = [setOut('tomato', '2027-05-05')];

  it('runs from the day something tender is out to the day after which the odds are below the garden’s risk', () => {
    const until = freezeDay(climate, { event: 'last-spring', limitF: 32, season: 2027, chancePercent: 30 });
    const task = watchOf(spring(tomatoes), 'frost-watch/spring:2027');
    expect(task?.window).toEqual({ earliest: '2027-05-05', preferred: '2027-05-05', latest: until });
    expect(task?.title).toBe(`Frost watch: have covers ready until ⟦${until}⟧`);
    expect(task).toMatchObject({ weight: 'check', subject: { type: 'garden' } });
  });

  it('lasts longer where the garden takes less risk', () => {
    const until = (frostRisk: 10 | 50) =>
      watchOf(spring(tomatoes, { place: { frostRisk } }), 'frost-watch/spring:2027')?.window.latest ?? '';
    expect(until(50)).toBe('2027-05-10');
    expect(until(10) > '2027-05-20').toBe(true);
  });

  it('is not kept for what goes out after it', () => {
    expect(watchOf(spring([setOut('tomato', '2027-06-01')]), 'frost-watch/spring:2027')).toBeUndefined();
    expect(watchOf(spring([sown('snap-bean', '2027-05-12')]), 'frost-watch/spring:2027')).toBeUndefined();
  });

  it('is kept for half-hardy plants only while nights of 28 °F come', () => {
    const key = 'frost-watch/spring:2027';
    const until = freezeDay(climate, { event: 'last-spring', limitF: 28, season: 2027, chancePercent: 30 });
    expect(watchOf(spring([setOut('lettuce-leaf', '2027-04-20')]), key)?.window.latest).toBe(until);
    expect(watchOf(spring([setOut('lettuce-leaf', '2027-05-10')]), key)).toBeUndefined();
  });

  it('tells early, middle and late years, and what is out', () => {
    const task = watchOf(spring([setOut('tomato', '2027-04-20')]), 'frost-watch/spring:2027', milwaukee);
    expect(task?.odds?.years).toBe(30);
    const told = task?.reasons.map(reasonSentence) ?? [];
    expect(told[1]).toMatch(/^At ⟦0 tempC⟧, the last freeze of spring is past by ⟦.*⟧ in one year of ten/);
    expect(task?.steps).toContain('Out in that time: tomato.');
  });
});

describe('the watch of autumn', () => {
  it('says from when to watch, a fortnight ahead at the earliest', () => {
    const task = watchOf(september(), 'frost-watch/autumn:2027');
    const turn = freezeDay(climate, { event: 'first-autumn', limitF: 32, season: 2027, chancePercent: 30 });
    expect(turn).toBe('2027-09-20');
    expect(task?.title).toBe('Frost watch: have covers ready from ⟦2027-09-20⟧');
    expect(task?.window).toMatchObject({ earliest: '2027-09-06', preferred: '2027-09-13' });
  });

  it('is not kept where all is in by then', () => {
    const plantings = [setOut('tomato', '2027-05-28', { harvested: '2027-09-10' })];
    expect(watchOf(september({ plantings }), 'frost-watch/autumn:2027')).toBeUndefined();
  });
});

describe('either watch', () => {
  it('is left out in a garden of hardy crops and roots', () => {
    const plantings = [sown('carrot', '2027-04-20'), sown('kale', '2027-04-20'), setOut('garlic', '2026-10-10')];
    expect(watched(spring(plantings))).toEqual([]);
  });

  it('is left out where no freeze date is known, or none comes that often', () => {
    const none = { 'last-spring': { kind: 'none' }, 'first-autumn': { kind: 'none' } } as const;
    const frostless = { ...climate, freezes: { 32: none, 28: none, 24: none } };
    expect(watched(september({ plantings: [setOut('tomato', '2027-04-01')] }), frostless)).toEqual([]);
  });

  it('leaves once a night was told: somebody watches', () => {
    const keys = (coldNights: Garden['coldNights']) => watched(september({ coldNights })).map(({ key }) => key);
    expect(keys([])).toContain('frost-watch/autumn:2027');
    expect(keys([expected(8, '2027-09-19')])).toEqual([]);
    expect(keys([measured(8, '2027-09-10')])).toEqual([]);
    expect(keys([measured(8, '2027-05-02')])).toContain('frost-watch/autumn:2027');
  });

  it('does not hang on today', () => {
    const of = september();
    const on = (today: string) => watchOf(of, 'frost-watch/autumn:2027', climate, today);
    expect(on('2027-09-30')).toEqual(on('2027-09-01'));
  });

  it('comes once a season, in a leap year too', () => {
    const plantings = [setOut('tomato', '2028-05-01', { id: 'x' })];
    const keys = draftsIn(spring(plantings), climate, '2027-12-01').map(({ key }) => key);
    expect(keys.filter((key) => key.startsWith('frost-watch/'))).toEqual([
      'frost-watch/spring:2028',
      'frost-watch/autumn:2028',
    ]);
  });
});

describe('south of the equator', () => {
  // Medians 10 October and 10 April: the season 2027 runs from July 2027 to June 2028.
  const south = frostDates('10-10', '04-10', -43);
  const of = garden({
    startedOn: '2027-08-01',
    place: { latitude: -43, longitude: 172, timeZone: 'Pacific/Auckland' },
    plantings: [setOut('lettuce-leaf', '2027-09-20'), setOut('tomato', '2027-12-05')],
  });

  it('watches in September and again from late March', () => {
    expect(watchOf(of, 'frost-watch/spring:2027', south)?.window.earliest).toBe('2027-09-20');
    const autumn = watchOf(of, 'frost-watch/autumn:2027', south);
    expect(autumn?.window.earliest.slice(0, 7)).toBe('2028-03');
    expect(autumn?.title).toContain('⟦2028-04-');
  });
});
