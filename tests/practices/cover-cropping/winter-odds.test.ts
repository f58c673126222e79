import { describe, expect, it } from 'vitest';
import { climateFromRecord } from '../../../src/climate/from-record.ts';
import type { DailyWeather } from '../../../src/garden/weather.ts';
import { coverCropById } from '../../../src/handbook/cover-crops.ts';
import type { CoverCrop } from '../../../src/handbook/shapes/cover.ts';
import { addDays, type Day, eachDay, inYear, monthDayOf, yearOf } from '../../../src/measures/days.ts';
import { winterOdds } from '../../../src/practices/cover-cropping/fit/winter-share.ts';
import { winterFate } from '../../../src/practices/cover-cropping/winter.ts';
import { countedWinters, ended, wintersThat } from '../../../src/practices/cover-cropping/winter-odds.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { NO_OFFSETS, recordClimate } from '../../climate/real-data.ts';
import { bed, frostDates, garden, inputOf, milwaukee } from '../gardens.ts';

function kind(id: string): CoverCrop {
  const cover = coverCropById.get(id);
  if (cover === undefined) throw new Error(`no cover ${id}`);
  return cover;
}

/** A flat bed over twelve made-up seasons: 15 to 20 °C in summer, 0 to 8 °C in winter, but for what some days say. */
function winters(said: (day: Day) => Partial<DailyWeather> | undefined, raised = false) {
  const rows = eachDay('2001-01-01', '2012-12-31').map((day): DailyWeather => {
    const month = Number(day.slice(5, 7));
    const air = month >= 5 && month <= 9 ? { tminC: 15, tmaxC: 20 } : { tminC: 0, tmaxC: 8 };
    return { day, ...air, rainMm: 0, snowDepthMm: 0, ...said(day) };
  });
  const climate = climateFromRecord({ ...NO_OFFSETS, latitude: 43, longitude: -80, rows, origin: 'made up' });
  return inputOf(garden({ beds: [bed('a', { raised })] }), climate);
}

const between = (day: Day, from: string, to: string) => day.slice(5) >= from && day.slice(5) <= to;
/** Two weeks of January at a low, so that the ground freezes; with a depth of snow. */
const january =
  (tminC: number, snowDepthMm = 0) =>
  (day: Day) =>
    between(day, '01-10', '01-24') ? { tminC, tmaxC: tminC + 5, snowDepthMm } : undefined;

function ends(id: string, input: ReturnType<typeof winters>, sown?: Day) {
  const counted = countedWinters(kind(id), input, sown);
  return (['lives', 'unsure', 'dies'] as const).filter((end) => wintersThat(end, counted?.ends ?? []) > 0);
}

describe('a range', () => {
  it('is kept: alive above its warm end, dead below its cold end, open between', () => {
    const vetch = { low: -16, high: -8.4 };
    expect([-8, -8.4, -12, -16, -16.1].map((tempC) => ended(tempC, vetch))).toEqual([
      'lives',
      'unsure',
      'unsure',
      'unsure',
      'dies',
    ]);
  });

  it('of one figure leaves nothing open', () => {
    expect([-8.2, -8.3, -9].map((tempC) => ended(tempC, { low: -8.3, high: -8.3 }))).toEqual(['lives', 'dies', 'dies']);
  });
});

describe('winters counted', () => {
  it('kill vetch on bare ground at −20 °C and not under 5 cm of snow, 12 °C warmer', () => {
    expect(ends('hairy_vetch', winters(january(-20)))).toEqual(['dies']);
    expect(ends('hairy_vetch', winters(january(-20, 50)))).toContain('lives');
  });

  it('leave it open on a raised bed, which keeps half of that snow', () => {
    // −20 + 6: between −16 and −8.4.
    expect(ends('hairy_vetch', winters(january(-20, 50), true))).toEqual(['unsure']);
  });

  it('kill oats by the air whatever the snow, for they stand above it', () => {
    expect(ends('oats', winters(january(-13, 300)))).toEqual(['dies']);
    expect(ends('oats', winters(january(-10, 300)))).toEqual(['unsure']);
    expect(ends('oats', winters(january(-8)))).toEqual(['lives']);
  });

  it('find a stand sown late not hardened where one sown in time is safe', () => {
    // Cold from 20 November on in ground that was above 10 °C until then.
    const suddenly = (day: Day) =>
      between(day, '10-01', '11-19')
        ? { tminC: 12, tmaxC: 18 }
        : between(day, '11-20', '12-20')
          ? { tminC: -14, tmaxC: -6 }
          : undefined;
    const input = winters(suddenly);
    expect(ends('cereal_rye', winters(january(-14)), '2027-09-10')).toEqual(['lives']);
    expect(ends('cereal_rye', input, '2027-10-25')).not.toContain('lives');
  });

  it('doubt a stand that thawed and froze twice over', () => {
    // −8 °C is above the warm end of vetch, −8.4 °C, and not above it by the 5 °C that two turns take.
    const cold = (day: Day) => (day.slice(8) < '12' ? { tminC: -8, tmaxC: -4 } : { tminC: 1, tmaxC: 6 });
    const steady = (day: Day) =>
      between(day, '12-20', '12-31') || between(day, '01-01', '02-20') ? { tminC: -8, tmaxC: -4 } : undefined;
    const turning = (day: Day) =>
      between(day, '12-01', '12-31') || between(day, '01-01', '03-10') ? cold(day) : undefined;
    expect(ends('hairy_vetch', winters(steady))).toEqual(['lives']);
    expect(ends('hairy_vetch', winters(turning))).toContain('unsure');
  });

  it('are none where the gardener states a zone, the kind goes by its zone, or there is no record', () => {
    const stated = inputOf(garden({ place: { hardinessZone: '5b' } }), milwaukee);
    expect(countedWinters(kind('hairy_vetch'), stated)).toBe(undefined);
    expect(countedWinters(kind('winter_wheat'), inputOf(garden(), milwaukee))).toBe(undefined);
    expect(countedWinters(kind('hairy_vetch'), inputOf(garden(), frostDates('05-10', '10-01')))).toBe(undefined);
  });

  it('are those of the record whatever the year of the sowing', () => {
    const input = inputOf(garden(), milwaukee);
    const on = (year: number) =>
      countedWinters(kind('hairy_vetch'), input, inYear(monthDayOf('2027-09-01'), year))?.ends;
    expect(on(2031)).toEqual(on(2027));
    expect(yearOf('2027-09-01')).toBe(2027);
  });
});

describe('the fate that the plan reckons with', () => {
  const input = (name: 'milwaukee' | 'bozeman') => inputOf(garden(), recordClimate(name, 2020));

  it('is the same as that of the odds, for every cover sown in good time', () => {
    for (const name of ['milwaukee', 'bozeman'] as const) {
      const there = input(name);
      for (const cover of coverCropById.values()) {
        if (cover.autumnSow === undefined || cover.frostTender) continue;
        const odds = winterOdds(there, coverParts(cover.id), '2027-07-15');
        expect(odds?.fate, `${cover.id} at ${name}`).toBe(winterFate(cover, there));
      }
    }
  });

  it('adds up to every winter', () => {
    const { lives, unsure, dies } = winterOdds(input('milwaukee'), coverParts('hairy_vetch'), '2027-09-01') ?? {};
    expect((lives?.of ?? 0) + (unsure?.of ?? 0) + (dies?.of ?? 0)).toBe(29);
  });

  it('of a mix is alive where any part is: rye with vetch lives, oats with vetch are as open as the vetch', () => {
    const odds = (id: string) => winterOdds(input('bozeman'), coverParts(id), '2027-08-25');
    expect(odds('rye-vetch')?.fate).toBe('lives');
    expect(odds('oats-vetch')?.dies).toEqual(odds('hairy_vetch')?.dies);
    expect(odds('oats-vetch')?.parts.map(({ fate }) => fate)).toEqual(['dies', 'unsure']);
  });

  it('is not asked of sowings in spring, nor of buckwheat', () => {
    expect(winterOdds(input('bozeman'), coverParts('oats'), addDays('2027-04-01', 9))).toBe(undefined);
    expect(winterOdds(input('bozeman'), coverParts('buckwheat'), '2027-07-10')).toBe(undefined);
  });
});
