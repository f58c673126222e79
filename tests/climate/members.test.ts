import { describe, expect, it } from 'vitest';
import type { Climate } from '../../src/climate/climate.ts';
import { fitToWorkOdds, groundOn, springWorkOdds } from '../../src/climate/fit-to-work.ts';
import { chanceOfFreezeOnOrAfter, freezeOdds } from '../../src/climate/freeze.ts';
import { heatOdds } from '../../src/climate/heat.ts';
import { withWeather } from '../../src/climate/logged.ts';
import { membersFor } from '../../src/climate/members.ts';
import { soilWarmOdds } from '../../src/climate/soil-temperature.ts';
import type { LoggedDay } from '../../src/garden/weather.ts';
import { withLogged } from '../../src/garden/weather.ts';
import { soilTextureById } from '../../src/handbook/soil-textures.ts';
import { addDays, type Day, eachDay } from '../../src/measures/days.ts';
import { recordClimate } from './real-data.ts';

const milwaukee = recordClimate('milwaukee', 2020);
const seen = (day: Day, weather: Partial<LoggedDay>): LoggedDay => ({ day, kind: 'observed', ...weather });
const spell = (from: Day, to: Day, weather: Partial<LoggedDay>) => eachDay(from, to).map((day) => seen(day, weather));
const knowing = (log: readonly LoggedDay[], today: Day, climate: Climate = milwaukee) =>
  withWeather(climate, log, today);
const silt = soilTextureById.get('silt_loam');
if (silt === undefined) throw new Error('silt_loam');
const soil = { texture: silt, raised: true };

describe('a log', () => {
  it('takes a later report of a day measurement by measurement', () => {
    const log = withLogged([seen('2027-04-19', { tminC: -1, rainMm: 4 })], [seen('2027-04-19', { newSnowMm: 150 })]);
    expect(log).toEqual([seen('2027-04-19', { tminC: -1, rainMm: 4, newSnowMm: 150 })]);
  });

  it('keeps what is expected apart from what was seen, and the days in order', () => {
    const expected: LoggedDay = { day: '2027-04-19', kind: 'expected', tminC: 3 };
    const log = withLogged([seen('2027-04-20', {})], [seen('2027-04-19', { tminC: -1 }), expected]);
    expect(log.map(({ day, kind }) => `${day} ${kind}`)).toEqual([
      '2027-04-19 expected',
      '2027-04-19 observed',
      '2027-04-20 observed',
    ]);
  });
});

describe('a climate that knows the weather', () => {
  it('counts what was seen up to today and what is expected in the ten days after', () => {
    const expected = (day: Day): LoggedDay => ({ day, kind: 'expected', tminC: 1 });
    const log = ['2027-04-17', '2027-04-19', '2027-04-29', '2027-04-30'].map(expected);
    const { logged } = knowing([...log.slice(0, 1), seen('2027-04-18', { tminC: 2 }), ...log.slice(1)], '2027-04-19');
    expect(logged.map(({ day }) => day)).toEqual(['2027-04-18', '2027-04-19', '2027-04-29']);
  });

  it('lets what was seen stand before what had been expected of the same day', () => {
    const log = withLogged([], [seen('2027-04-19', { tminC: -2 }), { day: '2027-04-19', kind: 'expected', tminC: 4 }]);
    expect(knowing(log, '2027-04-19').logged).toMatchObject([{ tminC: -2 }]);
  });

  it('is the same climate where nothing was logged', () => {
    expect(knowing([], '2027-04-19')).toBe(milwaukee);
  });
});

describe('members of a season', () => {
  it('are the record’s own seasons with the seen days laid over each', () => {
    const climate = knowing([seen('2027-04-19', { tminC: -9.9 })], '2027-04-20');
    const at = (members: ReturnType<typeof membersFor>, index: number) => members.map(({ tminC }) => tminC[index - 1]);
    expect(new Set(at(membersFor(climate, 2027), 109))).toEqual(new Set([-9.9]));
    expect(at(membersFor(climate, 2027), 110)).toEqual(at(milwaukee.seasons, 110));
    expect(membersFor(climate, 2028)).toBe(milwaukee.seasons);
  });

  it('take a 29 February that was seen', () => {
    const climate = knowing([seen('2028-02-29', { tminC: -20 })], '2028-03-01');
    expect(membersFor(climate, 2028).every(({ leapDay }) => leapDay?.tminC === -20)).toBe(true);
  });

  it('take no other year’s rain for snow that was measured alone, and none of its lying snow', () => {
    const climate = knowing([seen('2027-01-10', { newSnowMm: 150 })], '2027-01-11');
    expect(membersFor(climate, 2027).map(({ rainMm }) => rainMm[9])).toEqual(Array(30).fill(undefined));
    expect(
      membersFor(climate, 2027).flatMap(({ snowDepthMm }) => snowDepthMm.filter((mm) => mm !== undefined)),
    ).toEqual([]);
  });
});

describe('dates follow the season', () => {
  const heat = { from: '2027-01-01', method: 'mean-over-base', baseC: 4.4, sum: 300 } as const;

  it('heat comes sooner after a warm April and later after a cold one, and is surer than before', () => {
    const usual = heatOdds(milwaukee, heat);
    const warm = heatOdds(knowing(spell('2027-01-01', '2027-05-01', { tminC: 6, tmaxC: 16 }), '2027-05-01'), heat);
    const cold = heatOdds(knowing(spell('2027-01-01', '2027-05-01', { tminC: -3, tmaxC: 6 }), '2027-05-01'), heat);
    expect((warm.medianDay ?? '') < (usual.medianDay ?? '')).toBe(true);
    expect((cold.medianDay ?? '') > (usual.medianDay ?? '')).toBe(true);
    expect(warm.spreadDays).toBe(0);
    expect(cold.spreadDays).toBeLessThan(usual.spreadDays);
  });

  it('without a record, heat that was seen takes the place of what was to be expected', () => {
    const bare = { ...milwaukee, seasons: [] };
    const warm = knowing(spell('2027-01-01', '2027-04-20', { tminC: 6, tmaxC: 16 }), '2027-04-20', bare);
    expect((heatOdds(warm, heat).medianDay ?? '') < (heatOdds(bare, heat).medianDay ?? '')).toBe(true);
  });

  it('a freeze that was seen late is the last, or not the last, spring freeze in every member', () => {
    const late = knowing([seen('2027-05-20', { tminC: -1, tmaxC: 9 })], '2027-05-20');
    const ask = { event: 'last-spring', limitF: 32, season: 2027 } as const;
    expect(freezeOdds(late, ask).early).toBe('2027-05-20');
    expect(freezeOdds(late, { ...ask, season: 2028 })).toEqual(freezeOdds(milwaukee, { ...ask, season: 2028 }));
    expect(chanceOfFreezeOnOrAfter(late, { limitF: 32, day: '2027-05-20' })).toBe(1);
  });

  it('mild nights that were seen leave only freezes still to come', () => {
    const mild = knowing(spell('2027-04-01', '2027-05-10', { tminC: 4, tmaxC: 15 }), '2027-05-10');
    const chance = chanceOfFreezeOnOrAfter(mild, { limitF: 32, day: '2027-04-01' }) ?? 1;
    expect(chance).toBe(chanceOfFreezeOnOrAfter(milwaukee, { limitF: 32, day: '2027-05-11' }));
  });

  it('a garden’s own frost offset moves the freezes to come and not the one that was seen', () => {
    const pocket = { ...milwaukee, frostOffsetDays: 8 };
    const seenLate = knowing([seen('2027-06-15', { tminC: -1, tmaxC: 9 })], '2027-06-15', pocket);
    expect(freezeOdds(seenLate, { event: 'last-spring', limitF: 32, season: 2027 }).median).toBe('2027-06-15');
  });

  it('a cold spring keeps the soil cold', () => {
    const cold = knowing(spell('2027-03-01', '2027-04-20', { tminC: -5, tmaxC: 3 }), '2027-04-20');
    const ask = { season: 2027, tempC: 7 };
    expect((soilWarmOdds(cold, ask).early ?? '') > '2027-04-20').toBe(true);
    expect((soilWarmOdds(milwaukee, ask).early ?? '') < '2027-04-20').toBe(true);
  });
});

describe('a gap in the log', () => {
  const before = spell('2027-03-01', '2027-03-20', { tminC: 4, tmaxC: 14 });
  const resumed = (from: Day) => spell(from, '2027-04-15', { tminC: 4, tmaxC: 14 });
  const heat = { method: 'mean-over-base', baseC: 4.4, from: '2027-03-01', sum: 150 } as const;
  const notes = (climate: Climate) => climate.notes.slice(milwaukee.notes.length);

  it('of more than five days is told with its days, and lets the odds lie further apart', () => {
    const gap = knowing([...before, ...resumed('2027-03-31')], '2027-04-15');
    const whole = knowing([...before, ...resumed('2027-03-21')], '2027-04-15');
    expect(notes(whole)).toEqual([]);
    expect(notes(gap)).toEqual([
      expect.stringMatching(/from ⟦2027-03-21⟧ to ⟦2027-03-30⟧, 10 days\. The record's seasons/),
    ]);
    expect(heatOdds(whole, heat).spreadDays).toBe(0);
    expect(heatOdds(gap, heat).spreadDays).toBeGreaterThan(0);
  });

  it('without a record is filled with what is usual', () => {
    const bare = knowing([...before, ...resumed('2027-03-31')], '2027-04-15', { ...milwaukee, seasons: [] });
    expect(notes(bare)).toEqual([expect.stringMatching(/What is usual stands in for them\.$/)]);
  });

  it('of five days is not told', () => {
    expect(notes(knowing([...before, ...resumed('2027-03-26')], '2027-04-15'))).toEqual([]);
  });

  it('up to today is told too, and over 29 February', () => {
    const old = spell('2028-02-01', '2028-02-25', { tminC: -8, tmaxC: 0 });
    expect(notes(knowing(old, '2028-03-02'))).toEqual([expect.stringContaining('⟦2028-03-02⟧, 6 days')]);
    expect(notes(knowing(old, '2028-03-01'))).toEqual([]);
  });

  it('further back than half a year is not told', () => {
    expect(
      notes(knowing([...spell('2026-01-01', '2026-01-05', { tminC: 0 }), ...resumed('2026-07-01')], '2027-04-15')),
    ).toEqual([]);
  });
});

describe('soil fit to work', () => {
  it('comes later after a late snow, by the days it takes to melt and drain', () => {
    const dry = spell('2027-04-12', '2027-04-18', { tminC: 2, tmaxC: 14, rainMm: 0 });
    const snow = seen('2027-04-19', { newSnowMm: 150, snowDepthMm: 150, tminC: -1, tmaxC: 3 });
    const before = fitToWorkOdds(knowing(dry, '2027-04-18'), '2027-04-19', soil);
    const after = fitToWorkOdds(knowing([...dry, snow], '2027-04-19'), '2027-04-19', soil);
    expect(before?.median).toBe('2027-04-19');
    expect((after?.early ?? '') > '2027-04-19').toBe(true);
    expect((after?.median ?? '') > (before?.median ?? '')).toBe(true);
    expect((after?.late ?? '') <= addDays('2027-04-19', 21)).toBe(true);
  });

  it('is what a handful says of its day in every member, until the next soaking', () => {
    const rain = spell('2027-04-15', '2027-04-18', { tminC: 4, tmaxC: 12, rainMm: 20 });
    const dry = spell('2027-04-19', '2027-04-20', { tminC: 4, tmaxC: 15, rainMm: 0 });
    const wet = knowing(rain, '2027-04-18');
    const crumbled = { ...soil, handfuls: [{ on: '2027-04-18', crumbled: true }] };
    const smeared = { ...soil, handfuls: [{ on: '2027-05-20', crumbled: false }] };
    expect(groundOn(wet, '2027-04-18', soil)).toEqual({ state: 'soaked', share: 1 });
    expect(groundOn(wet, '2027-04-18', crumbled)).toEqual({ state: 'fit', share: 1 });
    expect(groundOn(milwaukee, '2027-05-20', smeared)?.state).not.toBe('fit');
    expect(groundOn(knowing([...rain, ...dry], '2027-04-20'), '2027-04-20', crumbled)?.state).toBe('fit');
    const soakedAgain = knowing([...rain, seen('2027-04-19', { tminC: 4, tmaxC: 12, rainMm: 25 })], '2027-04-19');
    expect(groundOn(soakedAgain, '2027-04-19', crumbled)?.state).toBe('soaked');
  });

  it('is what the ground is in most Mays, and snow or frost in most Januaries', () => {
    expect(groundOn(milwaukee, '2027-05-20', soil)?.state).toBe('fit');
    expect(['snow', 'frozen']).toContain(groundOn(milwaukee, '2027-01-25', soil)?.state);
  });

  it('comes in spring no sooner than the soil is warm enough', () => {
    const ready = springWorkOdds(milwaukee, { season: 2027, tempC: 4.4, soil });
    const warm = soilWarmOdds(milwaukee, { season: 2027, tempC: 4.4 });
    expect(
      [ready?.early, ready?.median, ready?.late].every(
        (day, at) => (day ?? '') >= ([warm.early, warm.median, warm.late][at] ?? ''),
      ),
    ).toBe(true);
  });

  it('is not said where there is no record of rain', () => {
    expect(fitToWorkOdds({ ...milwaukee, seasons: [] }, '2027-04-01', soil)).toBeUndefined();
  });
});
