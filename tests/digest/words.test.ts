import { describe, expect, test } from 'vitest';
import { daysAhead, hoursText, hourText, longDay, weekSpan } from '../../src/digest/words.ts';

test('a day is written in the order of its reader', () => {
  expect(longDay('2028-02-29', 'metric')).toBe('Tuesday 29 February');
  expect(longDay('2028-02-29', 'us')).toBe('Tuesday, February 29');
});

test.each([
  ['2027-04-19', '19 to 25 April 2027', 'April 19 to 25, 2027'],
  ['2027-04-26', '26 April to 2 May 2027', 'April 26 to May 2, 2027'],
  ['2026-12-28', '28 December 2026 to 3 January 2027', 'December 28, 2026 to January 3, 2027'],
])('the week of %s says each month and year no oftener than needed', (monday, metric, us) => {
  expect(weekSpan(monday, 'metric')).toBe(metric);
  expect(weekSpan(monday, 'us')).toBe(us);
});

test.each([
  [0, '0 min'],
  [59.6, '1 h'],
  [60, '1 h'],
  [80, '1 h 20 min'],
])('%f minutes are %s', (minutes, text) => {
  expect(hoursText(minutes)).toBe(text);
});

test('days ahead are said as people say them', () => {
  expect([0, 1, 2].map(daysAhead)).toEqual(['today', 'tomorrow', 'in 2 days']);
});

describe('the hour of work that has one', () => {
  const at = { from: '2027-09-28T22:45:00.000Z', minutes: 55 };

  test.each([
    ['metric', 'before 18:40', 'from 17:45'],
    ['us', 'before 6:40 pm', 'from 5:45 pm'],
  ] as const)('is read on the garden’s own clock, %s', (units, before, from) => {
    const clock = { timeZone: 'America/Chicago', units };
    expect(hourText({ at, needs: ['before-sunset'] }, clock)).toBe(before);
    expect(hourText({ at, needs: [] }, clock)).toBe(from);
  });

  test('moves with the clocks on the day they are put back', () => {
    // The same moments of the sun, an hour earlier by the clock: Chicago leaves summer time on 7 November 2027.
    const clock = { timeZone: 'America/Chicago', units: 'metric' } as const;
    const clockRead = (from: string) => hourText({ at: { from, minutes: 30 }, needs: ['before-sunset'] }, clock);
    expect(clockRead('2027-11-06T21:40:00.000Z')).toBe('before 17:10');
    expect(clockRead('2027-11-07T21:40:00.000Z')).toBe('before 16:10');
  });

  test('says midnight and noon as people do', () => {
    const clock = { timeZone: 'UTC', units: 'us' } as const;
    const from = (moment: string) => hourText({ at: { from: moment, minutes: 5 }, needs: [] }, clock);
    expect(from('2027-09-28T00:05:00.000Z')).toBe('from 12:05 am');
    expect(from('2027-09-28T12:05:00.000Z')).toBe('from 12:05 pm');
  });

  test('is not said of other work', () => {
    expect(hourText({ needs: ['before-sunset'] }, { timeZone: 'UTC', units: 'metric' })).toBeUndefined();
  });
});
