import { describe, expect, it } from 'vitest';
import { recordDays } from '../../src/climate/record-days.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { eachDay } from '../../src/measures/days.ts';

const whole = (from: string, to: string): DailyWeather[] =>
  eachDay(from, to).map((day) => ({ day, tminC: 1, tmaxC: 9, rainMm: 0 }));

describe('what a daily record holds', () => {
  it('is nothing where it has no day', () => {
    expect(recordDays([])).toBeUndefined();
  });

  it('is told by calendar years, leap days counted, years without a day among them', () => {
    const held = recordDays([...whole('2019-12-30', '2020-12-31'), { day: '2022-07-01', tminC: 10, newSnowMm: 0 }]);
    expect(held).toMatchObject({ days: 369, first: '2019-12-30', last: '2022-07-01' });
    expect(held?.years).toEqual([
      { year: 2019, lows: 2, highs: 2, rain: 2, snow: 0 },
      { year: 2020, lows: 366, highs: 366, rain: 366, snow: 0 },
      { year: 2021, lows: 0, highs: 0, rain: 0, snow: 0 },
      { year: 2022, lows: 1, highs: 0, rain: 0, snow: 1 },
    ]);
  });

  it('has no gap over five days missing, and one over six: as many as a freeze date can be told over', () => {
    const five = [...whole('2026-01-01', '2026-03-10'), ...whole('2026-03-16', '2026-12-31')];
    expect(recordDays(five)?.gaps).toEqual([]);
    const six = [...whole('2026-01-01', '2026-03-10'), ...whole('2026-03-17', '2026-12-31')];
    expect(recordDays(six)?.gaps).toEqual([{ from: '2026-03-11', to: '2026-03-16', days: 6 }]);
  });

  it('has a gap where days stand without a low or without a high, at its ends too', () => {
    const lame = eachDay('2026-06-01', '2026-06-10').map((day) => ({ day, tmaxC: 20 }));
    const empty = eachDay('2026-12-20', '2026-12-31').map((day) => ({ day }));
    expect(recordDays([...lame, ...whole('2026-06-11', '2026-12-19'), ...empty])?.gaps).toEqual([
      { from: '2026-06-01', to: '2026-06-10', days: 10 },
      { from: '2026-12-20', to: '2026-12-31', days: 12 },
    ]);
  });
});
