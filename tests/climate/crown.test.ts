import { describe, expect, it } from 'vitest';
import { snowWarmingC, type Winter, wintersInto } from '../../src/climate/crown.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { dayParts, eachDay } from '../../src/measures/days.ts';
import { NO_OFFSETS, recordClimate } from './real-data.ts';

/** Eleven seasons of 0 to 10 °C, with January at −30 to −20 °C under a snow depth that was measured. */
function januaries(snowDepthMm: number, latitude = 43) {
  const cold = latitude < 0 ? 7 : 1;
  const rows = eachDay('2001-01-01', '2011-12-31').map((day): DailyWeather => {
    const january = dayParts(day).month === cold;
    const air = january ? { tminC: -30, tmaxC: -20 } : { tminC: 0, tmaxC: 10 };
    return { day, ...air, rainMm: 0, snowDepthMm: january ? snowDepthMm : 0 };
  });
  return climateFromRecord({ ...NO_OFFSETS, latitude, longitude: -80, rows, origin: 'made up' });
}

const coldest = (winter: Winter | undefined) => Math.min(...(winter ?? []).map((day) => day?.crownC ?? 99));

describe('snow', () => {
  it('warms the crown by 2.4 °C a centimetre, 22 °C at the most', () => {
    expect([0, 1, 5, 9, 10, 40].map(snowWarmingC)).toEqual([0, 2.4, 12, 21.599999999999998, 22, 22]);
  });
});

describe('a winter at the crown', () => {
  it('is as cold as the air on bare ground', () => {
    expect(coldest(wintersInto(januaries(0), 2030, false)[0])).toBe(-30);
  });

  it('is 12 °C warmer under 5 cm of snow, and 6 °C on a raised bed, where the wind leaves half', () => {
    // A depth is held against the night after the evening it lay; the first night of January finds none.
    const snowed = (winter: Winter | undefined) => coldest(winter?.filter((day) => (day?.snowCm ?? 0) > 0));
    expect(snowed(wintersInto(januaries(50), 2030, false)[0])).toBe(-18);
    expect(snowed(wintersInto(januaries(50), 2030, true)[0])).toBe(-24);
  });

  it('never gets above freezing for all the snow there is', () => {
    const deep = wintersInto(januaries(600), 2030, false)[0]?.filter((day) => (day?.snowCm ?? 0) > 0);
    expect(Math.max(...(deep ?? []).map((day) => day?.crownC ?? 99))).toBeLessThanOrEqual(0);
  });

  it('has frozen ground only once the cold has lasted', () => {
    const winter = wintersInto(januaries(0), 2030, false)[0] ?? [];
    const first = winter.findIndex((day) => day?.frozen);
    const cold = winter.findIndex((day) => (day?.airC ?? 0) < -20);
    expect(first - cold).toBeGreaterThanOrEqual(2);
    expect(first - cold).toBeLessThanOrEqual(5);
  });

  it('is one fewer than the seasons of the record, as each needs two', () => {
    expect(wintersInto(januaries(0), 2030, false)).toHaveLength(10);
    expect(wintersInto(recordClimate('milwaukee', 2020), 2030, false)).toHaveLength(29);
  });

  it('lies in July at latitude −43', () => {
    const winter = wintersInto(januaries(0, -43), 2030, false)[0] ?? [];
    expect(coldest(winter)).toBe(-30);
    // From 29 December on it is 184 days to 1 July.
    expect(winter.findIndex((day) => day?.airC === -30)).toBe(184);
  });

  it('is never milder at the crown than the air, nor colder', () => {
    for (const winter of wintersInto(recordClimate('bozeman', 2020), 2030, true))
      for (const day of winter)
        expect(day === undefined || (day.crownC >= day.airC && day.crownC <= Math.max(0, day.airC))).toBe(true);
  });
});
