import { describe, expect, test } from 'vitest';
import { zonedHour } from '../../../src/calendar/zoned-hour.ts';
import { type DueAsked, dueLists } from '../../../src/digest/mail/due-lists.ts';
import { addDays, type Weekday, weekdayOf, weekStart } from '../../../src/measures/days.ts';

const LONG_AGO = '2020-01-01T00:00:00.000Z';
const [MONDAY, FRIDAY, SATURDAY, SUNDAY] = [1, 5, 6, 7] as const;

/** Sunday at 18:00 in Wisconsin, unless said otherwise. */
function due(now: string, other: Partial<DueAsked & { weekday: Weekday; hour: number }> = {}) {
  const { weekday = SUNDAY, hour = 18, timeZone = 'America/Chicago', since = LONG_AGO, settled = [] } = other;
  return dueLists({ timeZone, mail: { weekday, hour }, since, now, settled });
}

describe('the week a list covers', () => {
  test.each([
    ['Monday', MONDAY, '2027-04-19', '2027-04-19'],
    ['Friday', FRIDAY, '2027-04-23', '2027-04-19'],
    ['Saturday', SATURDAY, '2027-04-24', '2027-04-26'],
    ['Sunday', SUNDAY, '2027-04-25', '2027-04-26'],
  ])('sent on %s', (_, weekday, on, monday) => {
    expect(due(`${on}T23:30:00.000Z`, { weekday }).now?.monday).toBe(monday);
  });

  test('may begin in another year', () => {
    expect(due('2026-12-27T12:00:00.000Z').next).toEqual({ monday: '2026-12-28', at: '2026-12-28T00:00:00.000Z' });
    expect(due('2027-01-01T12:00:00.000Z', { weekday: FRIDAY, hour: 6 }).now).toEqual({
      monday: '2026-12-28',
      at: '2027-01-01T12:00:00.000Z',
    });
  });

  test('may be that of 29 February', () => {
    expect(due('2028-02-27T23:59:00.000Z').next.at).toBe('2028-02-28T00:00:00.000Z');
    expect(due('2028-02-28T00:00:00.000Z').now?.monday).toBe('2028-02-28');
    const tuesday = { weekday: 2 as const, hour: 7 };
    expect(due('2028-02-29T13:00:00.000Z', tuesday).now).toEqual({
      monday: '2028-02-28',
      at: '2028-02-29T13:00:00.000Z',
    });
  });
});

describe('a list is due', () => {
  test('from the very moment its hour strikes', () => {
    expect(due('2027-04-18T22:59:59.999Z').now?.monday).toBe('2027-04-12');
    expect(due('2027-04-18T23:00:00.000Z').now?.monday).toBe('2027-04-19');
  });

  test('late, for as long as its week lasts, and not a moment longer', () => {
    const monday = { weekday: MONDAY, hour: 18 } as const;
    expect(due('2027-04-26T04:59:59.000Z', monday).now).toEqual({
      monday: '2027-04-19',
      at: '2027-04-19T23:00:00.000Z',
    });
    const over = due('2027-04-26T05:00:00.000Z', monday);
    expect(over.now).toBeUndefined();
    expect(over.past[0]?.monday).toBe('2027-04-19');
    expect(over.next.monday).toBe('2027-04-26');
  });

  test('alone where the next is due too: the older says nothing new', () => {
    const { now, past } = due('2027-04-19T01:00:00.000Z');
    expect(now?.monday).toBe('2027-04-19');
    expect(past[0]?.monday).toBe('2027-04-12');
  });

  test('only for hours since its reader has mail', () => {
    const { now, past, next } = due('2027-04-21T12:00:00.000Z', { since: '2027-04-20T12:00:00.000Z' });
    expect([now, past]).toEqual([undefined, []]);
    expect(next.monday).toBe('2027-04-26');
  });

  test('after a long stop once, and five weeks back are remembered', () => {
    const { now, past } = due('2027-10-20T12:00:00.000Z');
    expect(now?.monday).toBe('2027-10-18');
    expect(past.map(({ monday }) => monday)).toEqual(['2027-10-11', '2027-10-04', '2027-09-27', '2027-09-20']);
  });
});

/** Every list of a year, as a program that looks each half hour would find them. */
function yearOf(asked: Pick<DueAsked, 'timeZone' | 'mail'>, from: string): { monday: string; at: string }[] {
  const found: { monday: string; at: string }[] = [];
  for (let now = Date.parse(from); found.length < 53; ) {
    const { next } = dueLists({ ...asked, since: LONG_AGO, now: new Date(now).toISOString() });
    found.push(next);
    now = Date.parse(next.at);
  }
  return found;
}

// The days on which clocks change are those of the IANA time zone database, which Node carries.
describe('where the clocks change', () => {
  test('an hour that is skipped is the first moment after it', () => {
    const two = { hour: 2, now: '2027-03-14T00:00:00.000Z' };
    // 2027-03-14: 02:00 is followed by 03:00 in Wisconsin, which is 08:00 UTC.
    expect(due(two.now, two).next.at).toBe('2027-03-14T08:00:00.000Z');
    expect(due('2027-03-14T08:00:00.000Z', two).now?.at).toBe('2027-03-14T08:00:00.000Z');
    expect(due('2027-03-14T12:00:00.000Z', two).next.at).toBe('2027-03-21T07:00:00.000Z');
  });

  test('an hour that comes twice is the first of them, and is not due again at the second', () => {
    const one = { hour: 1 };
    // 2027-11-07: 01:00 comes at 06:00 and at 07:00 UTC in Wisconsin.
    expect(due('2027-11-07T05:59:00.000Z', one).next.at).toBe('2027-11-07T06:00:00.000Z');
    for (const later of ['06:00', '06:59', '07:00', '07:30', '20:00']) {
      const { now, next } = due(`2027-11-07T${later}:00.000Z`, one);
      expect(now?.at, later).toBe('2027-11-07T06:00:00.000Z');
      expect(next.at, later).toBe('2027-11-14T07:00:00.000Z');
    }
  });

  test('midnight itself may be skipped: Havana on 14 March 2027', () => {
    const midnight = { timeZone: 'America/Havana', hour: 0 };
    expect(due('2027-03-14T00:00:00.000Z', midnight).next).toEqual({
      monday: '2027-03-15',
      at: '2027-03-14T05:00:00.000Z',
    });
  });

  test.each([
    ['America/Chicago', '2027-01-01T00:00:00.000Z'],
    ['Pacific/Auckland', '2027-07-01T00:00:00.000Z'],
    ['Australia/Adelaide', '2027-07-01T00:00:00.000Z'],
    ['Australia/Lord_Howe', '2027-07-01T00:00:00.000Z'],
    ['Asia/Kathmandu', '2027-01-01T00:00:00.000Z'],
    ['Europe/Dublin', '2028-01-01T00:00:00.000Z'],
  ])('every week of a year in %s has one list, at its hour of the clock there', (timeZone, from) => {
    for (const [weekday, hour] of [
      [SUNDAY, 2],
      [SUNDAY, 3],
      [MONDAY, 0],
      [SATURDAY, 23],
    ] as const) {
      const lists = yearOf({ timeZone, mail: { weekday, hour } }, from);
      const mondays = lists.map(({ monday }) => monday);
      expect(mondays).toEqual(mondays.map((_, week) => addDays(mondays[0] ?? '', 7 * week)));
      for (const { monday, at } of lists) {
        const day = addDays(monday, weekday >= SATURDAY ? weekday - 8 : weekday - 1);
        expect([weekdayOf(day), weekStart(addDays(day, weekday >= SATURDAY ? 7 : 0))]).toEqual([weekday, monday]);
        // Luxon, which knows nothing of croner, agrees on the moment.
        expect(at, `${day} ${hour}:00 in ${timeZone}`).toBe(zonedHour(timeZone, day, hour));
      }
    }
  });
});

describe('the list announced', () => {
  test('is not of a week that is settled: its day was changed since', () => {
    // The list of 26 April went out on Sunday the 25th; on Tuesday Friday was chosen.
    const tuesday = '2027-04-27T13:00:00.000Z';
    expect(due(tuesday, { weekday: FRIDAY }).next.monday).toBe('2027-04-26');
    expect(due(tuesday, { weekday: FRIDAY, settled: ['2027-04-26', '2027-04-19'] }).next).toEqual({
      monday: '2027-05-03',
      at: '2027-05-07T23:00:00.000Z',
    });
  });

  test('skips every week settled', () => {
    const settled = ['2026-12-28', '2027-01-04'];
    expect(due('2026-12-27T12:00:00.000Z', { settled }).next).toEqual({
      monday: '2027-01-11',
      at: '2027-01-11T00:00:00.000Z',
    });
  });
});
