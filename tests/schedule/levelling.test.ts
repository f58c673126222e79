/**
 * Weeks in a household that keeps four hours a week, on Wednesdays and Saturdays. In April and May 2027 the Wednesdays
 * are 7, 14, 21, 28 April and 5 May, the Saturdays 3, 10, 17, 24 April and 1 May.
 */
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { levelWeeks } from '../../src/schedule/levelling.ts';
import { steadyPlaces } from '../../src/schedule/steady-days.ts';
import type { SteadyPlace } from '../../src/schedule/steady-place.ts';
import { WeekLoad } from '../../src/schedule/week-load.ts';
import { type Days, draft, placedOn } from './drafts.ts';

const MARCH_1 = '2027-03-01';
const HOURS_3 = 180;
const WEEK: Days = ['2027-04-12', '2027-04-14', '2027-04-18'];
const UNTIL_MAY: Days = ['2027-04-01', '2027-04-14', '2027-05-02'];

const long = (job: string, days: Days, parts: Partial<TaskDraft> = {}) =>
  draft(job, job, days, { effortMinutes: HOURS_3, ...parts });

describe('a week that wants more than it gives', () => {
  it('keeps what would close; what can wait or be done before goes to the nearest week with room', () => {
    const { days } = placedOn(MARCH_1, [long('dig', UNTIL_MAY), long('sow', WEEK)]);
    expect(days).toEqual({ 'dig/bed:dig': '2027-04-10', 'sow/bed:sow': '2027-04-14' });
  });

  it('takes the hours it has: as much as fits stays', () => {
    const short = draft('weed', 'b', UNTIL_MAY, { effortMinutes: 60 });
    expect(placedOn(MARCH_1, [short, long('sow', WEEK)]).days[short.key]).toBe('2027-04-17');
  });

  it('sends on what stands in the way, where only a chain of moves makes room', () => {
    const drafts = [
      long('a-dig', ['2027-04-05', '2027-04-14', '2027-04-18']),
      long('b-lift', ['2027-04-12', '2027-04-21', '2027-04-25']),
      long('c-sow', ['2027-04-19', '2027-04-21', '2027-04-25']),
    ];
    expect(placedOn(MARCH_1, drafts).days).toEqual({
      'a-dig/bed:a-dig': '2027-04-10',
      'b-lift/bed:b-lift': '2027-04-17',
      'c-sow/bed:c-sow': '2027-04-21',
    });
  });

  it('splits one job between weeks before it overruns either', () => {
    const beds = ['a', 'b', 'c'].map((bed) =>
      draft('fork', bed, ['2027-04-12', '2027-04-14', '2027-04-25'], { effortMinutes: 90, onceMinutes: 5 }),
    );
    expect(placedOn(MARCH_1, beds).days).toEqual({
      'fork/bed:a': '2027-04-21',
      'fork/bed:b': '2027-04-14',
      'fork/bed:c': '2027-04-14',
    });
  });

  it('takes a check along with the work it rides with', () => {
    const look = draft('look', 'dig', ['2027-04-01', '2027-04-14', '2027-05-02'], {
      weight: 'check',
      effortMinutes: 3,
    });
    const { of } = placedOn(MARCH_1, [long('dig', UNTIL_MAY), long('sow', WEEK), look]);
    expect(of(look.key)).toMatchObject({ day: '2027-04-10', ridesWith: 'dig/bed:dig' });
  });

  it('moves nothing past what waits for it, nor before what it waits for', () => {
    const clear = long('clear', ['2027-04-12', '2027-04-14', '2027-05-30']);
    const plant = draft('plant', 'clear', ['2027-04-12', '2027-04-17', '2027-04-18'], {
      after: [{ key: clear.key, minDays: 2 }],
    });
    const { days, clashes } = placedOn(MARCH_1, [clear, plant, long('sow', WEEK)]);
    expect(days).toMatchObject({ 'clear/bed:clear': '2027-04-14', 'plant/bed:clear': '2027-04-17' });
    expect(clashes).toEqual([]);
  });

  it('sends nothing past the day of what waits for it, though its window would let it', () => {
    const chain = [
      long('a-dig', ['2027-04-12', '2027-04-14', '2027-04-25']),
      long('b-lift', ['2027-04-05', '2027-04-07', '2027-04-18']),
      long('c-sow', ['2027-04-05', '2027-04-07', '2027-04-11']),
    ];
    const plant = draft('plant', 'a-dig', ['2027-04-12', '2027-04-17', '2027-04-30']);
    const waits = { ...plant, after: [{ key: 'a-dig/bed:a-dig', minDays: 2 }] };
    const steady = (follower: TaskDraft) => {
      const places = steadyPlaces([...chain, follower], {
        workDays: [3, 6],
        hoursPerWeek: 4,
        away: [],
        pins: {},
        done: [],
      });
      return [places.get('a-dig/bed:a-dig')?.day, places.get(plant.key)?.day];
    };
    expect(steady(plant)).toEqual(['2027-04-21', '2027-04-17']);
    expect(steady(waits)).toEqual(['2027-04-14', '2027-04-17']);
  });

  it('leaves a pinned day alone and moves what stands beside it', () => {
    const [dig, sow] = [long('dig', UNTIL_MAY), long('sow', UNTIL_MAY)];
    const { days } = placedOn(MARCH_1, [dig, sow], { pins: { [dig.key]: '2027-04-14' } });
    expect(days).toEqual({ 'dig/bed:dig': '2027-04-14', 'sow/bed:sow': '2027-04-10' });
  });

  it('does no work more than eight weeks before its time', () => {
    const taken = Array.from({ length: 9 }, (_, at) => addDays('2027-02-15', 7 * at)).map((monday) =>
      long(`sow-${monday}`, [monday, addDays(monday, 2), addDays(monday, 6)]),
    );
    const patient = (preferred: string) => long('dig', ['2027-01-04', preferred, '2027-04-18']);
    const on = (preferred: string) => placedOn('2027-01-01', [...taken, patient(preferred)]).days['dig/bed:dig'];
    expect(on('2027-04-10')).toBe('2027-02-13');
    expect(on('2027-04-14')).toBe('2027-04-17');
  });

  it.each([
    ['over New Year', '2027-12-01', ['2027-12-27', '2027-12-29', '2028-01-02'], '2028-01-05'],
    ['around 29 February', '2028-02-01', ['2028-02-28', '2028-03-01', '2028-03-05'], '2028-03-08'],
    ['when clocks go forward', '2027-03-01', ['2027-03-08', '2027-03-10', '2027-03-14'], '2027-03-17'],
    ['when clocks go back', '2027-10-20', ['2027-11-01', '2027-11-03', '2027-11-07'], '2027-11-10'],
  ] as const)('is eased %s', (_, today, week, later) => {
    const [monday, preferred] = week;
    const patient = long('dig', [monday, preferred, later]);
    expect(placedOn(today, [patient, long('sow', week)]).days[patient.key]).toBe(later);
  });
});

describe('a move that is tried and taken back', () => {
  it('leaves a check that stands alone where it was', () => {
    const input = { workDays: [3, 6], hoursPerWeek: 4, away: [], pins: {}, done: [] } as const;
    const dig = long('dig', ['2027-04-12', '2027-04-17', '2027-04-25']);
    const look = draft('look', 'dig', ['2027-04-14', '2027-04-14', '2027-04-17'], {
      weight: 'check',
      effortMinutes: 3,
    });
    const sow = long('sow', WEEK, { effortMinutes: 200 });
    const plant = long('plant', ['2027-04-19', '2027-04-21', '2027-04-25'], { effortMinutes: 100 });
    const places = new Map<string, SteadyPlace>([
      [dig.key, { day: '2027-04-14' }],
      [look.key, { day: '2027-04-14', ridesWith: dig.key }],
      [sow.key, { day: '2027-04-14' }],
      [plant.key, { day: '2027-04-21' }],
    ]);
    const load = new WeekLoad([], input);
    const drafts = new Map([dig, look, sow, plant].map((each) => [each.key, each]));
    for (const [key, each] of drafts) load.add(places.get(key)?.day ?? '', each, key === look.key ? 'dig' : undefined);
    levelWeeks({ input, drafts, places, windows: new Map(), dayOf: (key) => places.get(key)?.day, load });
    expect(places.get(dig.key)?.day).toBe('2027-04-24');
    expect(places.get(look.key)).toEqual({ day: '2027-04-14' });
  });
});

describe('a day', () => {
  it('that holds its share already is left for the next work day of the week', () => {
    const drafts = [long('sow', WEEK, { effortMinutes: 110 }), long('dig', UNTIL_MAY, { effortMinutes: 100 })];
    expect(placedOn(MARCH_1, drafts).days).toEqual({ 'dig/bed:dig': '2027-04-17', 'sow/bed:sow': '2027-04-14' });
  });
});

describe('trips to one bed', () => {
  const clear = draft('clear', 'a', ['2027-04-05', '2027-04-14', '2027-04-18']);
  const weed = (bed: string, preferred: string) => draft('weed', bed, ['2027-04-01', preferred, '2027-05-20']);

  it('are made on one day where that puts work off by no more than three days', () => {
    expect(placedOn(MARCH_1, [clear, weed('a', '2027-04-17')]).days['weed/bed:a']).toBe('2027-04-14');
    expect(placedOn(MARCH_1, [clear, weed('b', '2027-04-17')]).days['weed/bed:b']).toBe('2027-04-17');
    expect(placedOn(MARCH_1, [clear, weed('a', '2027-04-18')]).days['weed/bed:a']).toBe('2027-04-14');
    expect(placedOn(MARCH_1, [clear, weed('a', '2027-04-21')]).days['weed/bed:a']).toBe('2027-04-21');
  });

  it('are trips to the yard alike, to whichever bin', () => {
    const pile = (id: string) => ({ type: 'pile' as const, id, name: id, binId: id });
    const turn = { ...clear, key: 'turn/pile:left', subject: pile('left') };
    const sift = { ...weed('a', '2027-04-17'), key: 'sift/pile:right', subject: pile('right') };
    expect(placedOn(MARCH_1, [turn, sift]).days).toEqual({ [turn.key]: '2027-04-14', [sift.key]: '2027-04-14' });
  });

  it('are not made for an order, which is written at home', () => {
    const order = { ...clear, weight: 'deadline' as const };
    expect(placedOn(MARCH_1, [order, weed('a', '2027-04-17')]).days['weed/bed:a']).toBe('2027-04-17');
  });
});
