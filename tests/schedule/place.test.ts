import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../../src/measures/days.ts';
import type { Days } from './drafts.ts';
import { doneMark, draft, placedOn } from './drafts.ts';

/** In April 2027 the Wednesdays are 7, 14, 21, 28 and the Saturdays 3, 10, 17, 24. */
const APRIL: Days = ['2027-04-01', '2027-04-12', '2027-04-30'];
const MARCH_1 = '2027-03-01';

describe('one task', () => {
  it('goes on the work day nearest to its preferred day', () => {
    expect(placedOn(MARCH_1, [draft('sow', 'a', APRIL)]).days).toEqual({ 'sow/bed:a': '2027-04-10' });
  });

  it('stays there as the days go by, until its day has passed', () => {
    for (const today of ['2027-03-31', '2027-04-01', '2027-04-09', '2027-04-10']) {
      expect(placedOn(today, [draft('sow', 'a', APRIL)]).days).toEqual({ 'sow/bed:a': '2027-04-10' });
    }
  });

  it('moves to the next work day when its day has passed and its window is still open', () => {
    expect(placedOn('2027-04-11', [draft('sow', 'a', APRIL)]).days).toEqual({ 'sow/bed:a': '2027-04-14' });
  });

  it('goes on any day at home where its window holds no work day', () => {
    const thursday = draft('sow', 'a', ['2027-04-08', '2027-04-08', '2027-04-09']);
    expect(placedOn(MARCH_1, [thursday]).days).toEqual({ 'sow/bed:a': '2027-04-08' });
  });

  it('keeps out of a time away', () => {
    const away = [{ from: '2027-04-08', to: '2027-04-15' }];
    expect(placedOn(MARCH_1, [draft('sow', 'a', APRIL)], { away }).days).toEqual({ 'sow/bed:a': '2027-04-07' });
  });

  it.each([
    ['over New Year', '2027-12-01', ['2027-12-30', '2027-12-31', '2028-01-10'], '2028-01-01'],
    ['around 29 February', '2028-02-01', ['2028-02-28', '2028-02-29', '2028-02-29'], '2028-02-29'],
    ['after 29 February', '2028-02-01', ['2028-02-28', '2028-02-29', '2028-03-05'], '2028-03-01'],
    ['in a southern spring', '2027-09-01', ['2027-10-01', '2027-10-14', '2027-10-31'], '2027-10-13'],
  ] as const)('finds its day %s', (_, today, days, expected) => {
    expect(placedOn(today, [draft('sow', 'a', days)]).days).toEqual({ 'sow/bed:a': expected });
  });
});

describe('the same job on several beds', () => {
  const beds = [
    draft('sow', 'a', ['2027-04-01', '2027-04-06', '2027-04-30']),
    draft('sow', 'b', ['2027-04-01', '2027-04-13', '2027-04-30']),
  ];

  it('is gathered into one day', () => {
    expect(placedOn(MARCH_1, beds).days).toEqual({ 'sow/bed:a': '2027-04-14', 'sow/bed:b': '2027-04-14' });
  });

  it('does not draw in a bed of a later group as today advances', () => {
    const three = [...beds, draft('sow', 'c', ['2027-04-01', '2027-04-17', '2027-04-30'])];
    const days = { 'sow/bed:a': '2027-04-14', 'sow/bed:b': '2027-04-14', 'sow/bed:c': '2027-04-17' };
    for (const today of [MARCH_1, '2027-04-07', '2027-04-08', '2027-04-14']) {
      expect(placedOn(today, three).days).toEqual(days);
    }
  });

  it('stays where it is when one bed is pinned to another day', () => {
    const pins = { 'sow/bed:b': '2027-04-24' };
    expect(placedOn(MARCH_1, beds, { pins }).days).toEqual({ 'sow/bed:a': '2027-04-14', 'sow/bed:b': '2027-04-24' });
  });

  it('is gathered though one bed has to wait for another job first', () => {
    const clear = draft('clear', 'b', ['2027-04-01', '2027-04-07', '2027-04-10']);
    const [a, b] = beds;
    const sow = [...(a ? [a] : []), ...(b ? [{ ...b, after: [{ key: clear.key, minDays: 5 }] }] : [])];
    expect(placedOn(MARCH_1, [...sow, clear]).days).toEqual({
      'clear/bed:b': '2027-04-07',
      'sow/bed:a': '2027-04-14',
      'sow/bed:b': '2027-04-14',
    });
  });

  it('is done in order where two jobs cross on two beds', () => {
    const days: Days = ['2027-04-01', '2027-04-14', '2027-04-30'];
    const crossing = [
      draft('clear', 'a', days),
      draft('sow', 'a', days, { after: [{ key: 'clear/bed:a', minDays: 7 }] }),
      draft('sow', 'b', days),
      draft('clear', 'b', days, { after: [{ key: 'sow/bed:b', minDays: 7 }] }),
    ];
    const { days: placed, clashes } = placedOn(MARCH_1, crossing);
    expect(clashes).toEqual([]);
    expect(placed).toEqual({
      'clear/bed:a': '2027-04-14',
      'clear/bed:b': '2027-04-28',
      'sow/bed:a': '2027-04-21',
      'sow/bed:b': '2027-04-21',
    });
  });
});

describe('work in order', () => {
  const clear = draft('clear', 'a', ['2027-04-01', '2027-04-07', '2027-04-30']);
  const sow = draft('sow', 'a', ['2027-04-01', '2027-04-07', '2027-04-24'], {
    after: [{ key: clear.key, minDays: 7 }],
  });

  it('comes as many days later as it must', () => {
    expect(placedOn(MARCH_1, [sow, clear]).days).toEqual({ 'clear/bed:a': '2027-04-07', 'sow/bed:a': '2027-04-14' });
  });

  it('is pushed on when what it waits for was not done in time, and no further than it must', () => {
    expect(placedOn('2027-04-08', [sow, clear]).days).toEqual({
      'clear/bed:a': '2027-04-10',
      'sow/bed:a': '2027-04-17',
    });
  });

  it('counts from the day the first was really done', () => {
    const done = [doneMark(clear, '2027-04-09')];
    expect(placedOn('2027-04-10', [sow], { done }).days).toEqual({ 'sow/bed:a': '2027-04-17' });
  });

  it('waits for nothing that was skipped', () => {
    expect(placedOn('2027-04-01', [sow]).days).toEqual({ 'sow/bed:a': '2027-04-07' });
  });

  it('names a clash when the last day of a window comes too soon', () => {
    const { clashes, days } = placedOn('2027-04-18', [sow, clear]);
    expect(clashes).toEqual([
      {
        key: 'sow/bed:a',
        title: 'sow bed a',
        what: 'It cannot be done before ⟦2027-04-28⟧, and its window closes on ⟦2027-04-24⟧.',
      },
    ]);
    expect(days).toEqual({ 'clear/bed:a': '2027-04-21', 'sow/bed:a': '2027-04-28' });
  });

  it('does not blame the first for a window of the second that cannot be met any more', () => {
    const { of, clashes } = placedOn('2027-04-27', [sow, clear]);
    expect([of('clear/bed:a')?.day, of('clear/bed:a')?.state]).toEqual(['2027-04-28', 'open']);
    expect([of('sow/bed:a')?.state, clashes]).toEqual(['lapsed', []]);
  });
});

describe('a pin', () => {
  const task = draft('sow', 'a', APRIL);
  const pinned = (day: string, today = MARCH_1) => placedOn(today, [task], { pins: { [task.key]: day } });

  it('is kept on a day that is no work day', () => {
    expect(pinned('2027-04-12').of(task.key)).toEqual({ draft: task, day: '2027-04-12', state: 'open', pinned: true });
  });

  it('is kept outside the window, with a warning', () => {
    expect(pinned('2027-05-03').of(task.key)).toMatchObject({
      day: '2027-05-03',
      pinWarning: 'Pinned outside its window, which runs from ⟦2027-04-01⟧ to ⟦2027-04-30⟧.',
    });
  });

  it('outlives the window: pinned work does not lapse before its day', () => {
    expect(pinned('2027-05-20', '2027-05-10').of(task.key)).toMatchObject({ day: '2027-05-20', state: 'open' });
  });

  it('holds on its own day and is spent once that has passed', () => {
    expect(pinned('2027-04-12', '2027-04-12').of(task.key)).toMatchObject({ day: '2027-04-12', pinned: true });
    expect(pinned('2027-04-12', '2027-04-13').of(task.key)).toMatchObject({ day: '2027-04-14', pinned: false });
  });

  it('draws what it waits for before it', () => {
    const sow = { ...task, after: [{ key: 'clear/bed:a', minDays: 2 }] };
    const clear = draft('clear', 'a', ['2027-03-20', '2027-04-20', '2027-04-30']);
    const { days, clashes } = placedOn(MARCH_1, [sow, clear], { pins: { [sow.key]: '2027-04-12' } });
    expect(days).toEqual({ 'clear/bed:a': '2027-04-10', 'sow/bed:a': '2027-04-12' });
    expect(clashes).toEqual([]);
  });

  it('is kept before what it waits for, and that is named', () => {
    const sow = { ...task, after: [{ key: 'clear/bed:a', minDays: 2 }] };
    const clear = draft('clear', 'a', ['2027-04-20', '2027-04-24', '2027-04-30']);
    const { days, clashes } = placedOn(MARCH_1, [sow, clear], { pins: { [sow.key]: '2027-04-12' } });
    expect(days).toMatchObject({ 'sow/bed:a': '2027-04-12' });
    expect(clashes.map(({ key, what }) => [key, what])).toEqual([
      ['sow/bed:a', 'It is pinned to ⟦2027-04-12⟧, but what it waits for holds it up until ⟦2027-04-26⟧.'],
    ]);
  });
});

describe('a lapsed task', () => {
  const missed = (ifMissed: 'still do' | 'replace' | 'drop') => draft('sow', 'a', APRIL, { ifMissed });
  const on = (today: string, ifMissed: 'still do' | 'replace' | 'drop', parts = {}) => {
    const row = placedOn(today, [missed(ifMissed)], parts).of('sow/bed:a');
    return row && [row.day, row.state];
  };

  it('is open on the last day of its window and lapsed on the next', () => {
    expect(on('2027-04-30', 'still do')).toEqual(['2027-04-30', 'open']);
    expect(on('2027-05-01', 'still do')).toEqual(['2027-05-01', 'lapsed']);
  });

  it('that should still be done stands on the next work day, for sixty days', () => {
    expect(on('2027-05-02', 'still do')).toEqual(['2027-05-05', 'lapsed']);
    expect(on('2027-06-29', 'still do')).toEqual(['2027-06-29', 'lapsed']);
    expect(on('2027-06-30', 'still do')).toBeUndefined();
  });

  it('that should still be done is given no day past those sixty, however full the weeks until then', () => {
    const full = ['2027-05-24', '2027-05-31'].map((monday) =>
      draft(`dig-${monday}`, 'b', [monday, addDays(monday, 2), addDays(monday, 6)], { effortMinutes: 240 }),
    );
    const late = draft('cut', 'a', ['2027-03-01', '2027-03-03', '2027-04-01']);
    const day = (today: string) => placedOn(today, [late, ...full]).days[late.key];
    expect(day('2027-05-25')).toBe('2027-05-26');
    expect(day('2027-05-31')).toBe('2027-05-31');
    expect(day('2027-06-01')).toBeUndefined();
  });

  it('that should still be done waits until somebody is at home', () => {
    const away = [{ from: '2027-05-01', to: '2027-05-20' }];
    expect(on('2027-05-02', 'still do', { away })).toEqual(['2027-05-22', 'lapsed']);
  });

  it.each(['replace', 'drop'] as const)('to %s stays named on its last day for fourteen days', (ifMissed) => {
    expect(on('2027-05-01', ifMissed)).toEqual(['2027-04-30', 'lapsed']);
    expect(on('2027-05-14', ifMissed)).toEqual(['2027-04-30', 'lapsed']);
    expect(on('2027-05-15', ifMissed)).toBeUndefined();
  });

  it('comes no earlier than what it still waits for', () => {
    const sow = { ...missed('still do'), after: [{ key: 'clear/bed:a', minDays: 3 }] };
    const clear = draft('clear', 'a', ['2027-04-01', '2027-05-22', '2027-05-30']);
    expect(placedOn('2027-05-10', [sow, clear]).days).toEqual({
      'clear/bed:a': '2027-05-22',
      'sow/bed:a': '2027-05-26',
    });
  });
});

describe('a check', () => {
  const check = (days: Days) => draft('look', 'a', days, { weight: 'check' });
  const work = draft('sow', 'a', APRIL);

  it('rides with work on the same bed on a day that suits it', () => {
    const { of } = placedOn(MARCH_1, [work, check(['2027-04-05', '2027-04-06', '2027-04-20'])]);
    expect(of('look/bed:a')).toMatchObject({ day: '2027-04-10', ridesWith: 'sow/bed:a' });
  });

  it('takes the nearer of two visits', () => {
    const later = draft('cut', 'a', ['2027-04-17', '2027-04-17', '2027-04-17']);
    const { of } = placedOn(MARCH_1, [work, later, check(['2027-04-05', '2027-04-15', '2027-04-30'])]);
    expect(of('look/bed:a')).toMatchObject({ day: '2027-04-17', ridesWith: 'cut/bed:a' });
  });

  it('has a day of its own where no work falls in its window, or only on another bed', () => {
    const elsewhere = draft('cut', 'b', ['2027-04-21', '2027-04-21', '2027-04-21']);
    const { of } = placedOn(MARCH_1, [work, elsewhere, check(['2027-04-19', '2027-04-22', '2027-04-30'])]);
    expect(of('look/bed:a')).toMatchObject({ day: '2027-04-21' });
    expect(of('look/bed:a')?.ridesWith).toBeUndefined();
  });

  it('of a stand rides with work on its bed', () => {
    const subject = { type: 'stand', id: 's-1', name: 'oats in Bed a', bedId: 'a' } as const;
    const stand = { ...check(['2027-04-05', '2027-04-06', '2027-04-20']), subject };
    expect(placedOn(MARCH_1, [work, stand]).of('look/bed:a')?.ridesWith).toBe('sow/bed:a');
  });

  it('does not ride with a deadline: ordering seed is no visit', () => {
    const order = draft('order', 'a', ['2027-04-10', '2027-04-10', '2027-04-10'], { weight: 'deadline' });
    const { of } = placedOn(MARCH_1, [order, check(['2027-04-05', '2027-04-07', '2027-04-20'])]);
    expect(of('look/bed:a')).toMatchObject({ day: '2027-04-07' });
  });

  it('goes with its work when that is late, while the day suits it', () => {
    const { of } = placedOn('2027-04-11', [work, check(['2027-04-05', '2027-04-06', '2027-04-20'])]);
    expect(of('look/bed:a')).toMatchObject({ day: '2027-04-14', ridesWith: 'sow/bed:a' });
  });

  it('has a day of its own once its work is done', () => {
    const done = [doneMark(work, '2027-04-02')];
    const { of } = placedOn('2027-04-03', [check(['2027-04-05', '2027-04-06', '2027-04-20'])], { done });
    expect(of('look/bed:a')).toMatchObject({ day: '2027-04-07', state: 'open' });
  });

  it('that stands by itself does not jump to late work that comes past before it', () => {
    const late = draft('cut', 'a', ['2027-04-01', '2027-04-03', '2027-04-30']);
    const look = check(['2027-04-12', '2027-04-17', '2027-04-20']);
    expect(placedOn('2027-04-11', [late, look]).days).toEqual({
      'cut/bed:a': '2027-04-14',
      'look/bed:a': '2027-04-17',
    });
    expect(placedOn('2027-04-15', [late, look]).of('look/bed:a')?.ridesWith).toBe('cut/bed:a');
  });

  it('is gathered with the same check on other beds', () => {
    const one = check(['2027-04-01', '2027-04-06', '2027-04-30']);
    const two = draft('look', 'b', ['2027-04-01', '2027-04-13', '2027-04-30'], { weight: 'check' });
    expect(placedOn(MARCH_1, [one, two]).days).toEqual({ 'look/bed:a': '2027-04-14', 'look/bed:b': '2027-04-14' });
  });

  it('can be what work waits for', () => {
    const look = check(['2027-04-05', '2027-04-07', '2027-04-20']);
    const cut = draft('cut', 'a', APRIL, { after: [{ key: look.key, minDays: 10 }] });
    expect(placedOn(MARCH_1, [cut, look]).days).toEqual({ 'cut/bed:a': '2027-04-17', 'look/bed:a': '2027-04-07' });
  });
});

describe('a look that comes within three weeks of its sowing', () => {
  // The sowing may be made on any day of April, and the bed has other work in May, on which a look would gladly ride.
  const sow = draft('sow', 'a', APRIL);
  const weed = draft('weed', 'a', ['2027-05-22', '2027-05-22', '2027-05-22']);
  const look = draft('look', 'a', ['2027-04-15', '2027-05-20', '2027-05-21'], {
    weight: 'check',
    after: [{ key: 'sow/bed:a', minDays: 14, maxDays: 21 }],
  });
  const lookDay = (today: Day, pins = {}) => placedOn(today, [sow, weed, look], { pins });

  it('keeps to the day of the sowing, though its own window is wider and other work comes later', () => {
    const { days, of, clashes } = lookDay(MARCH_1);
    expect(days).toMatchObject({ 'sow/bed:a': '2027-04-10', 'look/bed:a': '2027-05-01' });
    expect(of('look/bed:a')?.draft.window).toEqual({
      earliest: '2027-04-15',
      preferred: '2027-05-01',
      latest: '2027-05-01',
    });
    expect(clashes).toEqual([]);
  });

  it.each([
    ['pinned to a later day', MARCH_1, { 'sow/bed:a': '2027-04-28' }, '2027-04-28', '2027-05-19'],
    ['late', '2027-04-22', {}, '2027-04-24', '2027-05-15'],
  ] as const)('moves with a sowing that is %s, without a clash', (_, today, pins, sown, looked) => {
    const { days, clashes } = lookDay(today, pins);
    expect(days).toMatchObject({ 'sow/bed:a': sown, 'look/bed:a': looked });
    expect(clashes).toEqual([]);
  });

  it('comes after a time away that takes all of its days', () => {
    const away = [{ from: '2027-04-12', to: '2027-05-09' }];
    const { days, clashes } = placedOn(MARCH_1, [sow, look], { away });
    expect(days['sow/bed:a']).toBe('2027-04-10');
    expect(clashes).toEqual([]);
    expect((days['look/bed:a'] ?? '') > '2027-05-09').toBe(true);
  });
});

describe('an order that yields', () => {
  const squeeze = draft('squeeze', 'a', ['2027-04-14', '2027-04-14', '2027-04-20']);
  const cut = (latest: string) => ({
    ...draft('cut', 'a', ['2027-04-03', '2027-04-07', latest]),
    after: [{ key: 'squeeze/bed:a', minDays: 0, yields: true as const }],
  });

  it('is kept while the window lasts', () => {
    const { days, clashes } = placedOn(MARCH_1, [squeeze, cut('2027-04-24')]);
    expect(days).toEqual({ 'squeeze/bed:a': '2027-04-14', 'cut/bed:a': '2027-04-14' });
    expect(clashes).toEqual([]);
  });

  it('gives way where the window would be lost, which is told', () => {
    const { days, clashes } = placedOn(MARCH_1, [squeeze, cut('2027-04-10')]);
    expect(days).toEqual({ 'squeeze/bed:a': '2027-04-14', 'cut/bed:a': '2027-04-07' });
    expect(clashes).toEqual([
      {
        key: 'cut/bed:a',
        title: expect.any(String),
        what: 'It should wait until ⟦2027-04-14⟧, and its window closes on ⟦2027-04-10⟧.',
        orderYields: true,
      },
    ]);
  });
});
