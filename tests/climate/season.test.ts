import { describe, expect, it } from 'vitest';
import { calendarIndex, dayOfIndex, seasonIndex, seasonOf, seasonTurnOf } from '../../src/climate/season.ts';
import { addDays, eachDay } from '../../src/measures/days.ts';

describe('the season of a place', () => {
  it('turns on 1 January from the equator north and on 1 July south of it', () => {
    expect([50, 0.1, 0, -0.1, -43].map(seasonTurnOf)).toEqual(['01-01', '01-01', '01-01', '07-01', '07-01']);
  });

  it('is named by the calendar year it starts in', () => {
    expect(seasonOf('01-01', '2027-12-31')).toBe(2027);
    expect(seasonOf('01-01', '2028-01-01')).toBe(2028);
    expect(seasonOf('07-01', '2027-06-30')).toBe(2026);
    expect(seasonOf('07-01', '2027-07-01')).toBe(2027);
    expect(seasonOf('07-01', '2028-01-01')).toBe(2027);
  });
});

describe('the index of a day', () => {
  it('runs from 1 to 365 through a northern year', () => {
    expect(seasonIndex('01-01', '2027-01-01')).toBe(1);
    expect(seasonIndex('01-01', '2027-07-31')).toBe(212);
    expect(seasonIndex('01-01', '2027-12-31')).toBe(365);
  });

  it('runs from July to June in the south, over New Year without a step', () => {
    expect(seasonIndex('07-01', '2027-07-01')).toBe(1);
    expect(seasonIndex('07-01', '2027-12-31')).toBe(184);
    expect(seasonIndex('07-01', '2028-01-01')).toBe(185);
    expect(seasonIndex('07-01', '2028-01-28')).toBe(212);
    expect(seasonIndex('07-01', '2028-06-30')).toBe(365);
  });

  it('gives 29 February the index of the 28th and moves no later day', () => {
    for (const turn of ['01-01', '07-01'] as const) {
      expect(seasonIndex(turn, '2028-02-29')).toBe(seasonIndex(turn, '2028-02-28'));
      expect(seasonIndex(turn, '2028-03-01')).toBe(seasonIndex(turn, '2027-03-01'));
    }
  });

  it('is undone by dayOfIndex on every day of a plain and of a leap year, but for 29 February', () => {
    for (const turn of ['01-01', '07-01'] as const)
      for (const day of eachDay('2027-01-01', '2028-12-31').filter((each) => each !== '2028-02-29'))
        expect(dayOfIndex(turn, seasonOf(turn, day), seasonIndex(turn, day))).toBe(day);
  });
});

describe('the day of an index', () => {
  it('rounds halves up', () => {
    expect(dayOfIndex('01-01', 2027, 112.5)).toBe('2027-04-23');
    expect(dayOfIndex('01-01', 2027, 112.49)).toBe('2027-04-22');
  });

  it('rounds a half up that arithmetic left a hair short', () => {
    expect(dayOfIndex('01-01', 2027, 112.5 - 1e-9)).toBe('2027-04-23');
  });

  it('falls in a neighbouring season beyond 1 and 365', () => {
    expect(dayOfIndex('01-01', 2027, 366)).toBe('2028-01-01');
    expect(dayOfIndex('01-01', 2027, 0)).toBe('2026-12-31');
    expect(dayOfIndex('07-01', 2027, 366)).toBe('2028-07-01');
    expect(dayOfIndex('07-01', 2027, -0.4)).toBe('2027-06-30');
    expect(dayOfIndex('01-01', 2027, 2 * 365 + 1)).toBe('2029-01-01');
  });

  it('never gives a 29 February', () => {
    expect(dayOfIndex('01-01', 2028, 59)).toBe('2028-02-28');
    expect(dayOfIndex('01-01', 2028, 60)).toBe('2028-03-01');
    expect(dayOfIndex('07-01', 2027, 243)).toBe('2028-02-28');
    expect(dayOfIndex('07-01', 2027, 244)).toBe('2028-03-01');
  });

  it('steps one calendar day for one index outside February', () => {
    for (let index = 61; index < 400; index += 1)
      expect(dayOfIndex('01-01', 2027, index + 1)).toBe(addDays(dayOfIndex('01-01', 2027, index), 1));
  });
});

it('counts the calendar year from January whatever the season', () => {
  expect([1, 184, 185, 365].map((index) => calendarIndex('07-01', index))).toEqual([182, 365, 1, 181]);
  expect(calendarIndex('01-01', 200)).toBe(200);
});
