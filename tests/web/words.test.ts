import { describe, expect, test } from 'vitest';
import { oddsInWords } from '../../src/web/pages/why-this-date.tsx';
import { daysAhead, fullDay, hoursMinutes, longDay, weekSpan } from '../../src/web/words.ts';

describe('days', () => {
  test('are written in the order their reader uses', () => {
    expect(longDay('2027-04-19', 'metric')).toBe('Monday 19 April');
    expect(longDay('2027-04-19', 'us')).toBe('Monday, April 19');
    expect(fullDay('2027-04-19', 'metric')).toBe('19 April 2027');
    expect(fullDay('2027-04-19', 'us')).toBe('April 19, 2027');
  });

  test.each([
    ['2027-04-19', 'metric', '19 to 25 April 2027'],
    ['2027-04-19', 'us', 'April 19 to 25, 2027'],
    ['2027-04-26', 'metric', '26 April to 2 May 2027'],
    ['2027-04-26', 'us', 'April 26 to May 2, 2027'],
    ['2027-12-27', 'metric', '27 December 2027 to 2 January 2028'],
    ['2028-02-28', 'metric', '28 February to 5 March 2028'],
  ] as const)('the week of %s is, in %s, %s', (monday, units, words) => {
    expect(weekSpan(monday, units)).toBe(words);
  });

  test('ahead are counted in words', () => {
    expect([0, 1, 5].map(daysAhead)).toEqual(['today', 'tomorrow', 'in 5 days']);
  });
});

test.each([
  [0, '0:00'],
  [5, '0:05'],
  [59.6, '1:00'],
  [80, '1:20'],
  [600, '10:00'],
])('%d minutes are %s', (minutes, words) => {
  expect(hoursMinutes(minutes)).toBe(words);
});

describe('odds', () => {
  test('name the three days and the years they were counted over', () => {
    const odds = { early: '2027-05-21', median: '2027-05-30', late: '2027-06-08', shareOfYears: 1, years: 30 };
    expect(oddsInWords(odds, 'metric')).toBe(
      'What this date is reckoned from has come in one year of ten by 21 May, in half the years by 30 May, ' +
        'in nine years of ten by 8 June. Counted over 30 years.',
    );
  });

  test('say in how many years it does not come', () => {
    expect(oddsInWords({ early: '2027-05-21', shareOfYears: 0.4, years: 30 }, 'us')).toContain(
      'In 60 years of 100 it does not come at all.',
    );
  });

  test('name no day where too few years have one, and say when years were not counted', () => {
    expect(oddsInWords({ shareOfYears: 0.05, years: 0 }, 'us')).toBe(
      'What this date is reckoned from comes in too few years to name a day. From published dates, not from counted years.',
    );
  });
});
