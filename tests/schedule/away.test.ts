import { describe, expect, it } from 'vitest';
import { addDays, eachDay } from '../../src/measures/days.ts';
import { homeSpan, isAway, timesAway } from '../../src/schedule/work-days.ts';
import { type Days, draft, placedOn } from './drafts.ts';

/** The day a job with a window is put on, seen from a day, with some times away; the household works every day. */
function dayOf(window: Days, away: readonly { from: string; to: string }[], today = '2027-01-01') {
  return placedOn(today, [draft('cut', 'a', window)], { workDays: [1, 2, 3, 4, 5, 6, 7], away }).days['cut/bed:a'];
}

describe('work in a time away', () => {
  it('is pulled forward to the last day at home where its window closes before the return', () => {
    expect(dayOf(['2027-07-05', '2027-07-12', '2027-07-16'], [{ from: '2027-07-10', to: '2027-07-17' }])).toBe(
      '2027-07-09',
    );
  });

  it('waits for the return where its window is still open then', () => {
    expect(dayOf(['2027-07-11', '2027-07-14', '2027-07-25'], [{ from: '2027-07-10', to: '2027-07-17' }])).toBe(
      '2027-07-18',
    );
  });

  it('keeps its best day where its whole window lies in it: somebody else has to, or it is lost', () => {
    expect(dayOf(['2027-07-11', '2027-07-13', '2027-07-16'], [{ from: '2027-07-10', to: '2027-07-17' }])).toBe(
      '2027-07-13',
    );
  });

  it('comes before the away days of two times that overlap, as if they were one', () => {
    const away = [
      { from: '2027-07-14', to: '2027-07-22' },
      { from: '2027-07-10', to: '2027-07-17' },
    ];
    expect(dayOf(['2027-07-01', '2027-07-18', '2027-07-22'], away)).toBe('2027-07-09');
    expect(dayOf(['2027-07-12', '2027-07-18', '2027-07-24'], away)).toBe('2027-07-23');
  });

  it('goes between two times away that leave a day between them', () => {
    const away = [
      { from: '2027-07-01', to: '2027-07-09' },
      { from: '2027-07-11', to: '2027-07-20' },
    ];
    expect(dayOf(['2027-07-02', '2027-07-15', '2027-07-18'], away)).toBe('2027-07-10');
  });

  it.each<[string, Days, string, string, string]>([
    ['New Year', ['2026-12-20', '2027-01-01', '2027-01-04'], '2026-12-28', '2027-01-06', '2026-12-27'],
    ['a leap day', ['2028-02-25', '2028-03-01', '2028-03-02'], '2028-02-29', '2028-03-05', '2028-02-28'],
    ['a leap day alone', ['2028-02-29', '2028-02-29', '2028-03-02'], '2028-02-29', '2028-02-29', '2028-03-01'],
    ['clocks going forward', ['2027-03-10', '2027-03-14', '2027-03-15'], '2027-03-13', '2027-03-16', '2027-03-12'],
    ['clocks going back', ['2027-11-07', '2027-11-08', '2027-11-12'], '2027-11-05', '2027-11-08', '2027-11-09'],
  ])('over %s is out of count day by day', (_name, window, from, to, day) => {
    expect(dayOf(window, [{ from, to }], '2026-12-01')).toBe(day);
  });

  it('of a year, its end unknown, leaves nothing behind before it that could be done', () => {
    const today = '2027-07-01';
    const away = [{ from: '2027-07-10', to: addDays('2027-07-10', 366) }];
    const windows: Days[] = [
      ['2027-07-05', '2027-08-01', '2028-06-30'],
      ['2027-07-11', '2027-07-13', '2027-07-16'],
    ];
    const drafts = windows.map((window, index) => draft('cut', `b${index}`, window));
    const { days, clashes } = placedOn(today, drafts, { away });
    expect(days).toEqual({ 'cut/bed:b0': '2027-07-07', 'cut/bed:b1': '2027-07-13' });
    expect(clashes).toEqual([]);
  });

  it('that another task follows is pulled forward far enough for both', () => {
    const clear = draft('clear', 'a', ['2027-07-01', '2027-07-08', '2027-07-20']);
    const sow = draft('sow', 'a', ['2027-07-01', '2027-07-15', '2027-07-20'], {
      after: [{ key: 'clear/bed:a', minDays: 5 }],
    });
    const { days } = placedOn('2027-06-20', [clear, sow], {
      workDays: [1, 2, 3, 4, 5, 6, 7],
      away: [{ from: '2027-07-10', to: '2027-07-25' }],
    });
    expect(days).toEqual({ 'clear/bed:a': '2027-07-04', 'sow/bed:a': '2027-07-09' });
  });

  it('that is pinned into it stays there, and says that nobody is at home', () => {
    const cut = draft('cut', 'a', ['2027-07-01', '2027-07-12', '2027-07-20']);
    const parts = { pins: { 'cut/bed:a': '2027-07-12' }, away: [{ from: '2027-07-10', to: '2027-07-17' }] };
    const row = placedOn('2027-07-01', [cut], parts).of('cut/bed:a');
    expect([row?.day, row?.pinned]).toEqual(['2027-07-12', true]);
    expect(row?.pinWarning).toBe('Pinned to ⟦2027-07-12⟧, when nobody is at home.');
  });

  it('that is pinned outside its window too says both', () => {
    const cut = draft('cut', 'a', ['2027-07-01', '2027-07-03', '2027-07-05']);
    const parts = { pins: { 'cut/bed:a': '2027-07-12' }, away: [{ from: '2027-07-10', to: '2027-07-17' }] };
    expect(placedOn('2027-07-01', [cut], parts).of('cut/bed:a')?.pinWarning).toMatch(/^Pinned outside .* Pinned to /);
  });

  it('is no visit for a look that somebody at home could take', () => {
    const cut = draft('cut', 'a', ['2027-07-11', '2027-07-12', '2027-07-13']);
    const look = draft('look', 'a', ['2027-07-01', '2027-07-12', '2027-07-20'], { weight: 'check' });
    const away = [{ from: '2027-07-10', to: '2027-07-17' }];
    const { days } = placedOn('2027-07-01', [cut, look], { away });
    expect(days['cut/bed:a']).toBe('2027-07-12');
    expect(isAway(days['look/bed:a'] ?? '2027-07-12', away)).toBe(false);
  });

  it('that is late already is never put on a day away while there is one at home', () => {
    const late = draft('cut', 'a', ['2027-06-01', '2027-06-05', '2027-06-20']);
    const away = [{ from: '2027-07-01', to: '2027-07-17' }];
    expect(placedOn('2027-07-01', [late], { away }).days['cut/bed:a']).toBe('2027-07-21');
  });
});

describe('times away', () => {
  it('that meet or overlap are one, whatever their order', () => {
    const away = [
      { from: '2027-12-30', to: '2028-01-02' },
      { from: '2027-07-01', to: '2027-07-05' },
      { from: '2028-01-03', to: '2028-01-04' },
      { from: '2028-01-01', to: '2028-01-01' },
    ];
    expect(timesAway(away)).toEqual([
      { from: '2027-07-01', to: '2027-07-05' },
      { from: '2027-12-30', to: '2028-01-04' },
    ]);
  });

  it('are cut from the ends of a span, not out of its middle', () => {
    const away = [
      { from: '2028-02-20', to: '2028-02-29' },
      { from: '2028-03-05', to: '2028-03-06' },
    ];
    expect(homeSpan({ from: '2028-02-27', to: '2028-03-10' }, away)).toEqual({ from: '2028-03-01', to: '2028-03-10' });
    expect(homeSpan({ from: '2028-02-27', to: '2028-03-06' }, away)).toEqual({ from: '2028-03-01', to: '2028-03-04' });
  });

  it('that hold every day of a span leave it as it is', () => {
    const span = { from: '2028-02-27', to: '2028-03-02' };
    expect(homeSpan(span, [{ from: '2028-01-01', to: '2028-12-31' }])).toEqual(span);
    expect(eachDay(span.from, span.to)).toHaveLength(5);
  });
});
