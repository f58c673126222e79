import { expect, test } from 'vitest';
import { daysAhead, hoursText, longDay, weekSpan } from '../../src/digest/words.ts';

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
