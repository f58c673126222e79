import { describe, expect, test } from 'vitest';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { addDays } from '../../src/measures/days.ts';
import { NOON } from './entries.ts';
import { stockedStore } from './stocked.ts';

const origin = 'Read by the household at the back door.';

function daysFrom(first: string, count: number): DailyWeather[] {
  return Array.from({ length: count }, (_, i) => ({ day: addDays(first, i), tminC: i / 10, tmaxC: 20 + i / 10 }));
}

describe('the long record', () => {
  test('keeps what was measured and leaves out what was not', async () => {
    const store = await stockedStore();
    const days: DailyWeather[] = [
      { day: '2024-02-28', tminC: -2.2, tmaxC: 0, rainMm: 0, newSnowMm: 12.7, snowDepthMm: 102 },
      { day: '2024-02-29', tminC: 0 },
      { day: '2024-03-01' },
    ];
    await store.replaceWeatherRecord('plot', { origin, leftOut: [2019], days });
    expect(await store.weatherRecord('plot')).toStrictEqual({ origin, leftOut: [2019], days });
  });

  test('thirty years go in and come back in order', async () => {
    const store = await stockedStore();
    // 1991-01-01 to 2020-12-31 is 30 × 365 days and 8 leap days.
    const days = daysFrom('1991-01-01', 10_958);
    await store.replaceWeatherRecord('plot', { origin, leftOut: [], days: [...days].reverse() });
    const record = await store.weatherRecord('plot');
    expect(record?.days).toEqual(days);
    expect(record?.days.at(-1)?.day).toBe('2020-12-31');
  });

  test('a new one takes the place of the old one whole', async () => {
    const store = await stockedStore();
    await store.replaceWeatherRecord('plot', { origin, leftOut: [2019], days: daysFrom('2019-01-01', 730) });
    const next = { origin: 'A nearer station.', leftOut: [], days: daysFrom('2020-06-01', 3) };
    expect(await store.replaceWeatherRecord('plot', next)).toBe(2);
    expect(await store.weatherRecord('plot')).toEqual(next);
  });

  test('the one before it is kept whole, and only that one', async () => {
    const store = await stockedStore();
    expect(await store.formerRecord('plot')).toBeUndefined();
    const [first, second, third] = ['First.', 'Second.', 'Third.'].map((words, at) => ({
      origin: words,
      leftOut: [2019 + at],
      days: [...daysFrom(`202${at}-01-01`, 300), { day: '2025-06-01', rainMm: 3.2 }, { day: '2025-06-02' }],
    }));
    if (first === undefined || second === undefined || third === undefined) throw new Error('Three are wanted.');
    await store.replaceWeatherRecord('plot', first);
    expect(await store.formerRecord('plot')).toBeUndefined();
    await store.replaceWeatherRecord('plot', second);
    expect(await store.formerRecord('plot')).toStrictEqual(first);
    await store.replaceWeatherRecord('plot', third);
    expect(await store.formerRecord('plot')).toStrictEqual(second);
    expect(await store.weatherRecord('plot')).toStrictEqual(third);
  });

  test('a day given twice is refused and the old record stays', async () => {
    const store = await stockedStore();
    const old = { origin, leftOut: [], days: daysFrom('2020-01-01', 2) };
    await store.replaceWeatherRecord('plot', old);
    const twice = [...daysFrom('2021-01-01', 600), { day: '2021-01-01', tminC: 3 }];
    await expect(store.replaceWeatherRecord('plot', { origin, leftOut: [], days: twice })).rejects.toThrow(/UNIQUE/);
    expect(await store.weatherRecord('plot')).toEqual(old);
    expect(await store.factsVersion('plot')).toBe(1);
  });

  test('is absent where none was brought in, and is no other garden’s', async () => {
    const store = await stockedStore();
    await store.createGarden({ id: 'yard', name: 'Yard', createdAt: NOON });
    await store.replaceWeatherRecord('yard', { origin, leftOut: [], days: daysFrom('2020-01-01', 2) });
    expect(await store.weatherRecord('plot')).toBeUndefined();
    expect((await store.weatherRecord('yard'))?.days).toHaveLength(2);
  });
});
