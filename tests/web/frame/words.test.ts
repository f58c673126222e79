import { describe, expect, test } from 'vitest';
import { standing } from '../../../src/web/frame/words.ts';
import { oddsInWords } from '../../../src/web/task/why-this-date.tsx';

test.each([
  ['open', 'drop', 'open'],
  ['done', 'still do', 'done'],
  ['skipped', 'still do', 'skipped'],
  ['lapsed', 'still do', 'late'],
  ['lapsed', 'replace', 'missed'],
  ['lapsed', 'drop', 'missed'],
] as const)('a task that is %s and, if missed, to be handled by "%s" stands as %s', (state, ifMissed, words) => {
  expect(standing({ state, ifMissed })).toBe(words);
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
    const late = { early: '2027-05-21', shareOfYears: 0.4, years: 30 };
    expect(oddsInWords(late, 'metric', 'the last spring freeze of 0 °C')).toMatch(
      /^The last spring freeze of 0 °C has come in one year of ten by 21 May\./,
    );
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
