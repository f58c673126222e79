import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import { groundOn } from '../../../src/climate/fit-to-work.ts';
import { climateFromRecord } from '../../../src/climate/from-record.ts';
import { withWeather } from '../../../src/climate/logged.ts';
import type { Garden, SoilSqueeze, SoilTextureId } from '../../../src/garden/garden.ts';
import type { LoggedDay } from '../../../src/garden/weather.ts';
import { addDays, type Day, daysBetween, eachDay } from '../../../src/measures/days.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { soilAwake } from '../../../src/practices/seasons.ts';
import { awaitedSqueezeKey, soilClassOf } from '../../../src/practices/soil-class.ts';
import { soilReadiness } from '../../../src/practices/soil-readiness/index.ts';
import { makePlan } from '../../../src/schedule/reconcile.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { NO_OFFSETS, recordRows } from '../../climate/real-data.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, inputOf, milwaukee, setOut, sown } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const awake = soilAwake(climate, 2027) ?? '';

function drafts(of: Garden, over: Climate = climate, today: Day = of.startedOn): readonly TaskDraft[] {
  return soilReadiness.work(inputOf(of, over, today), {
    coverSowings: [],
    coverStands: [],
    uncovered: [],
    thinStands: [],
    compostSupply: [],
  }).drafts;
}

const tests = (of: Garden, over?: Climate, today?: Day) =>
  drafts(of, over, today).filter(({ kind, key }) => kind === 'squeeze-soil' && key.includes('/2027/'));

const answered = (on: Day, answer: SoilSqueeze['answer'], soilTexture: SoilTextureId = 'loam'): SoilSqueeze => ({
  on,
  soilTexture,
  answer,
});

describe('one handful a soil', () => {
  it('speaks for every bed of a texture, and is a look that makes a crumbling answer', () => {
    const [task, ...others] = tests(garden({ beds: [bed('a'), bed('b'), bed('c')] }));
    expect(others).toEqual([]);
    expect(task).toMatchObject({ key: 'squeeze-test/soil:loam/2027/1', weight: 'check', ifMissed: 'drop' });
    expect(task?.makes).toEqual([{ makes: 'soil-squeezed', soilTexture: 'loam', answer: 'crumbles' }]);
    expect(task?.steps[0]).toContain('It speaks for all.');
  });

  it('is asked of each texture there is, by the names of its beds, as one entry', () => {
    const of = garden({ beds: [bed('a'), bed('b', { soilTexture: 'clay' }), bed('c', { soilTexture: 'clay' })] });
    const found = tests(of);
    expect(found.map(({ key }) => key)).toEqual(['squeeze-test/soil:loam/2027/1', 'squeeze-test/soil:clay/2027/1']);
    expect(found[1]?.steps[0]).toContain('Bed B, Bed C');
    const now = '2027-01-01T12:00:00.000Z';
    const plan = makePlan({ garden: of, drafts: found, today: of.startedOn, now, factsVersion: 1 });
    expect(plan.entries.map(({ title }) => title)).toEqual(['Squeeze a handful of soil: clay, loam']);
  });

  it('is not asked of ground that only lasting crops hold', () => {
    expect(tests(garden({ plantings: [setOut('asparagus', '2024-05-01')] }))).toEqual([]);
  });
});

describe('the day of the first handful', () => {
  it('is the median day the soil wakes, with a week before it and two after', () => {
    const [task] = tests(garden());
    expect(task?.window).toEqual({ earliest: addDays(awake, -7), preferred: awake, latest: addDays(awake, 14) });
    expect(task?.odds?.median).toBe(awake);
  });

  it('leaves at least three days to choose from, whatever is planned', () => {
    for (const day of ['2027-02-10', awake, addDays(awake, 5), '2027-06-20']) {
      const [task] = tests(garden({ plantings: [sown('pea', day)] }));
      expect(daysBetween(task?.window.earliest ?? '', task?.window.latest ?? ''), day).toBeGreaterThanOrEqual(3);
    }
  });

  it('comes before the first work planned, with room for a second handful', () => {
    const day = addDays(awake, 1);
    const [task] = tests(garden({ plantings: [sown('pea', day)] }));
    expect(task?.window).toMatchObject({ preferred: addDays(day, -3), latest: awake });
    expect(task?.reasons[1]).toMatchObject({ rule: 'squeeze.before-work', saw: { what: 'garden pea', day } });
  });

  it('counts a cover sown in spring as work, but not clover strewn on frozen ground', () => {
    const firstOf = (id: string) => tests(garden({ stands: [cover(id, addDays(awake, 1))] }))[0]?.window.preferred;
    expect(firstOf('oats')).toBe(addDays(awake, -2));
    expect(firstOf('red_clover')).toBe(awake);
  });

  it('never falls in ground that is frozen in nine years of ten, however early the plan', () => {
    const [task] = tests(garden({ plantings: [sown('pea', '2027-01-20')] }), milwaukee);
    expect((task?.window.preferred ?? '') >= (task?.odds?.early ?? '')).toBe(true);
  });

  it('is not asked where the soil never wakes, nor where it never sleeps', () => {
    const monthly = (low: number, high: number) => ({ tminC: Array(12).fill(low), tmaxC: Array(12).fill(high) });
    expect(tests(garden(), inventedClimate({ normals: monthly(-15, -3) }))).toEqual([]);
    expect(tests(garden(), inventedClimate({ normals: monthly(12, 22) }))).toEqual([]);
  });

  it('does not move as days go by, nor over 29 February', () => {
    const of = garden({ startedOn: '2028-01-10' });
    const found = ['2028-01-10', '2028-02-28', '2028-02-29', '2028-03-01'].map((today) =>
      drafts(of, milwaukee, today).filter(({ key }) => key.includes('/2028/')),
    );
    for (const later of found.slice(1)) expect(later).toEqual(found[0]);
  });

  it('falls in the spring of the south', () => {
    const rows = recordRows('milwaukee').map((row) => ({ ...row, day: addDays(row.day, 182) }));
    const south = climateFromRecord({ longitude: -88, latitude: -43, origin: 'moved', ...NO_OFFSETS, rows });
    const [task] = tests(garden({ startedOn: '2027-07-10', place: { latitude: -43 } }), south);
    expect(task?.key).toBe('squeeze-test/soil:loam/2027/1');
    expect(task?.window.preferred.slice(0, 7)).toBe('2027-09');
  });
});

describe('after an answer', () => {
  const of = (...soilSqueezes: SoilSqueeze[]) => garden({ soilSqueezes });

  it.each([
    ['sand', 2],
    ['loam', 3],
    ['clay', 7],
  ] as const)('that %s smeared the test comes again %i days later', (soilTexture, days) => {
    const soilSqueezes = [answered('2027-04-01', 'smears', soilTexture)];
    const [task] = tests(garden({ place: { soilTexture }, soilSqueezes }));
    expect(task?.key).toBe(`squeeze-test/soil:${soilTexture}/2027/2`);
    expect(task?.window).toEqual({
      earliest: addDays('2027-04-01', days),
      preferred: addDays('2027-04-01', days),
      latest: addDays('2027-04-01', days + 7),
    });
    expect(task?.title).toContain('again');
  });

  it('that it smeared twice the third is asked, from the last', () => {
    const [task] = tests(of(answered('2027-04-05', 'smears'), answered('2027-04-01', 'smears')));
    expect(task).toMatchObject({ key: 'squeeze-test/soil:loam/2027/3', window: { earliest: '2027-04-08' } });
  });

  it('that it crumbled nothing more is asked this season, but again the next', () => {
    const crumbled = of(answered('2027-04-01', 'smears'), answered('2027-04-05', 'crumbles'));
    expect(tests(crumbled)).toEqual([]);
    expect(draft(drafts(crumbled, climate, '2027-06-01'), 'squeeze-test/soil:loam/2028').key).toMatch(/2028\/1$/);
  });

  it('of one soil the other is still asked', () => {
    const beds = [bed('a'), bed('b', { soilTexture: 'clay' })];
    const found = tests(garden({ beds, soilSqueezes: [answered('2027-04-01', 'crumbles')] }));
    expect(found.map(({ key }) => key)).toEqual(['squeeze-test/soil:clay/2027/1']);
  });

  it('of last spring or of autumn nothing is counted', () => {
    const [task] = tests(of(answered('2026-04-01', 'crumbles'), answered('2027-10-01', 'smears')));
    expect(task?.key).toBe('squeeze-test/soil:loam/2027/1');
  });

  it('past midsummer nobody asks again', () => {
    expect(tests(of(answered('2027-06-30', 'smears')))).toEqual([]);
  });

  it('is not wanted once something was sown there this spring', () => {
    const plantings = [sown('pea', '2027-04-02')];
    expect(tests(garden({ startedOn: '2027-04-10', plantings }))).toEqual([]);
  });
});

it('the test that other work waits for is the one that is open, or the one that crumbled', () => {
  const key = (...soilSqueezes: SoilSqueeze[]) =>
    awaitedSqueezeKey(inputOf(garden({ soilSqueezes }), climate, '2027-04-20'), 'loam', 2027);
  expect(key()).toMatch(/2027\/1$/);
  expect(key(answered('2027-04-01', 'smears'))).toMatch(/2027\/2$/);
  expect(key(answered('2027-04-01', 'smears'), answered('2027-04-05', 'crumbles'))).toMatch(/2027\/2$/);
});

describe('weather after a handful that crumbled', () => {
  const crumbledOn = '2027-04-14';
  const day = (on: Day, rainMm: number): LoggedDay => ({ kind: 'observed', day: on, tminC: 4, tmaxC: 13, rainMm });
  const told = (today: Day, ...rows: LoggedDay[]) => {
    const soilSqueezes = [answered(crumbledOn, 'crumbles')];
    const plantings = [sown('carrot', '2027-04-29')];
    return tests(
      garden({ startedOn: '2027-03-01', beds: [bed('a', { raised: false })], soilSqueezes, plantings }),
      withWeather(milwaukee, rows, today),
      today,
    );
  };

  it('that leaves it dry asks for nothing', () => {
    expect(told('2027-04-15', day('2027-04-15', 0))).toEqual([]);
  });

  it('that soaks it asks again, also on the days on which it has drained and not yet dried', () => {
    const days = eachDay('2027-04-16', '2027-04-20').map((on, at) => day(on, at === 0 ? 30 : 0));
    const states = days.map(({ day: on }, at) => {
      const climateNow = withWeather(milwaukee, days.slice(0, at + 1), on);
      const state = groundOn(
        climateNow,
        on,
        soilClassOf(garden({ beds: [bed('a', { raised: false })] }), 'loam'),
      )?.state;
      return [state, told(on, ...days.slice(0, at + 1)).map(({ key }) => key)] as const;
    });
    expect(states.map(([state]) => state)).toContain('wet');
    for (const [state, keys] of states)
      expect(keys, state).toEqual(state === 'fit' ? [] : ['squeeze-test/soil:loam/2027/2']);
  });

  it('is over once the soil is reckoned fit again', () => {
    const dried = eachDay('2027-04-17', '2027-04-25').map((on) => day(on, 0));
    expect(told('2027-04-25', day('2027-04-16', 30), ...dried)).toEqual([]);
  });

  it('counts as soon as it is expected of tomorrow, and not of later days', () => {
    const seen = day('2027-04-15', 0);
    const snow = (on: Day): LoggedDay => ({ kind: 'expected', day: on, snowDepthMm: 150 });
    const [task] = told('2027-04-15', seen, snow('2027-04-16'));
    expect(task?.reasons[0]?.saw).toMatchObject({ state: 'snow-expected', on: '2027-04-16' });
    expect(told('2027-04-15', seen, snow('2027-04-18'))).toEqual([]);
  });

  it('is told apart from a test nobody made: once its last day is past, snow has it asked again before the work', () => {
    const beds = [bed('a', { raised: false })];
    const late = garden({ startedOn: '2027-03-01', beds, plantings: [sown('carrot', '2027-05-08')] });
    const [first] = tests(late, milwaukee);
    const on = addDays(first?.window.latest ?? '', 5);
    const snow: LoggedDay = {
      kind: 'observed',
      day: on,
      tminC: -2,
      tmaxC: 2,
      rainMm: 20,
      newSnowMm: 200,
      snowDepthMm: 200,
    };
    const [again] = tests(late, withWeather(milwaukee, [snow], on), on);
    expect(again?.key).toBe(first?.key);
    expect(again?.reasons[0]).toMatchObject({ rule: 'squeeze.setback', saw: { state: 'snow', on } });
    expect((again?.window.earliest ?? '') > on).toBe(true);
  });

  it('has it asked again for work whose planned day is past and that nobody marked', () => {
    const beds = [bed('a', { raised: false })];
    const late = garden({ startedOn: '2027-03-01', beds, plantings: [sown('carrot', '2027-04-20')] });
    const snow: LoggedDay = {
      kind: 'observed',
      day: '2027-04-26',
      tminC: -4,
      tmaxC: 1,
      newSnowMm: 220,
      snowDepthMm: 220,
    };
    const [again] = tests(late, withWeather(milwaukee, [snow], '2027-04-26'), '2027-04-26');
    expect(again?.reasons[0]).toMatchObject({ rule: 'squeeze.setback', saw: { state: 'snow' } });
    expect((again?.window.earliest ?? '') > '2027-04-26').toBe(true);
  });

  it('does not undo a handful of the very day on which the soil was reckoned soaked', () => {
    expect(told(crumbledOn, day('2027-04-13', 30), day(crumbledOn, 2))).toEqual([]);
  });
});

describe('snow that is told where no record says when it melts', () => {
  const told = (of: Garden, today: Day, ...rows: LoggedDay[]) => tests(of, withWeather(climate, rows, today), today);
  const snow = (day: Day, kind: LoggedDay['kind'] = 'observed'): LoggedDay => ({
    kind,
    day,
    tminC: -4,
    snowDepthMm: 230,
  });
  const planted = (...soilSqueezes: SoilSqueeze[]) =>
    garden({ startedOn: '2027-03-01', soilSqueezes, plantings: [sown('pea', awake)] });

  it('puts the test behind it, as many days as the soil takes to drain', () => {
    const [task] = told(planted(), awake, snow(awake));
    expect(task?.window).toMatchObject({ earliest: addDays(awake, 3), preferred: addDays(awake, 3) });
    expect(task?.reasons[0]).toMatchObject({ rule: 'squeeze.snow-told', saw: { on: awake, days: 3, state: 'snow' } });
    // The thermometer read every day after it moves nothing further.
    const after = eachDay(addDays(awake, 1), addDays(awake, 2)).map(
      (day): LoggedDay => ({ kind: 'observed', day, tminC: 1 }),
    );
    expect(told(planted(), addDays(awake, 2), snow(awake), ...after)[0]?.window).toEqual(task?.window);
  });

  it('undoes what a handful said, and all that waits for the next', () => {
    const crumbled = planted(answered(addDays(awake, -2), 'crumbles'));
    expect(told(crumbled, awake)).toEqual([]);
    const [task] = told(crumbled, awake, snow(awake));
    expect(task).toMatchObject({ key: 'squeeze-test/soil:loam/2027/2', window: { preferred: addDays(awake, 3) } });
    const drafts = draftsIn(crumbled, withWeather(climate, [snow(awake)], awake), awake);
    expect(draft(drafts, 'sow/').after.map(({ key }) => key)).toContain('squeeze-test/soil:loam/2027/2');
  });

  it('counts where it is expected of tomorrow; winter’s snow and a dusting move nothing', () => {
    const [ahead] = told(planted(), awake, snow(addDays(awake, 1), 'expected'));
    expect(ahead?.reasons[0]?.saw).toMatchObject({ state: 'snow-expected', on: addDays(awake, 1) });
    const asked = told(planted(), awake);
    expect(told(planted(), awake, snow(addDays(awake, 2), 'expected'))).toEqual(asked);
    expect(told(planted(), awake, snow('2027-03-02'))).toEqual(asked);
    expect(told(planted(), awake, { ...snow(awake), snowDepthMm: 5 })).toEqual(asked);
  });
});
