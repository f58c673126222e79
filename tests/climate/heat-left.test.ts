import { describe, expect, it } from 'vitest';
import type { Climate } from '../../src/climate/climate.ts';
import { climateFromRecord } from '../../src/climate/from-record.ts';
import { type HeatBefore, heatLeftByMember, usualHeatBetween, usualHeatLeft } from '../../src/climate/heat-left.ts';
import type { DailyWeather } from '../../src/garden/weather.ts';
import { addDays, type Day, dayParts, eachDay } from '../../src/measures/days.ts';
import { frostDates } from '../practices/gardens.ts';
import { NO_OFFSETS } from './real-data.ts';

const count = { method: 'mean-over-base', baseC: 4 } as const;

/** Ten seasons of 5 to 15 °C, but for nights of −5 °C from 11 October 2001 and from 1 November in the others. */
function record(parts: { latitude?: number; frostOffsetDays?: number; without?: readonly Day[] } = {}): Climate {
  const rows = eachDay('2001-01-01', '2010-12-31')
    .filter((day) => !(parts.without ?? []).includes(day))
    .map((day): DailyWeather => ({ day, tminC: freezing(day) ? -5 : 5, tmaxC: 15 }));
  return climateFromRecord({
    ...NO_OFFSETS,
    frostOffsetDays: parts.frostOffsetDays ?? 0,
    latitude: parts.latitude ?? 43,
    longitude: -80,
    rows,
    origin: 'made up',
  });
}

function freezing(day: Day): boolean {
  const { year, month, dayOfMonth } = dayParts(day);
  return year === 2001 ? month > 10 || (month === 10 && dayOfMonth >= 11) : month >= 11;
}

/** Of the first two seasons. */
const left = (climate: Climate, ask: HeatBefore) => heatLeftByMember(climate, ask).slice(0, 2);

describe('heat left before a freeze', () => {
  const from = '2027-09-01';

  it('is added up from the sowing to the day before the freeze, season by season', () => {
    // Six units a day: 40 days to 10 October, 61 to 31 October.
    expect(left(record(), { from, limitF: 32, count })).toEqual([240, 366]);
  });

  it('is none once it freezes', () => {
    expect(left(record(), { from: '2027-10-11', limitF: 32, count })).toEqual([0, 126]);
  });

  it('ends sooner in a pocket of frost', () => {
    expect(left(record({ frostOffsetDays: 7 }), { from, limitF: 32, count })).toEqual([198, 324]);
  });

  it('is none where the soil is too cold for the seed for two weeks', () => {
    expect(left(record(), { from, limitF: 32, count, soilMinC: 30 })).toEqual([0, 0]);
    expect(left(record(), { from, limitF: 32, count, soilMinC: 5 })).toEqual([240, 366]);
  });

  it('is not known in a season with more than five days missing', () => {
    const gap = (days: number) => eachDay('2001-09-10', addDays('2001-09-10', days - 1));
    expect(left(record({ without: gap(5) }), { from, limitF: 32, count })[0]).toBe(240);
    expect(left(record({ without: gap(6) }), { from, limitF: 32, count })[0]).toBe('unknown');
  });

  it('is told of no season where there is no daily record, but of the usual year', () => {
    const stated = frostDates('05-10', '10-01');
    const ask = { from, limitF: 32, count } as const;
    expect(heatLeftByMember(stated, ask)).toEqual([]);
    expect(usualHeatLeft(stated, ask)).toBeCloseTo(usualHeatBetween(stated, [from, '2027-10-01'], count), 6);
  });

  it('is the less the later the sowing', () => {
    const stated = frostDates('10-20', '04-20', -43);
    const units = ['2028-02-01', '2028-03-01', '2028-04-01', '2028-04-20'].map(
      (day) => usualHeatLeft(stated, { from: day, limitF: 32, count }) ?? Number.NaN,
    );
    expect(units).toEqual([...units].sort((a, b) => b - a));
    expect(units.at(-1)).toBe(0);
  });
});
