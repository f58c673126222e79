import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  clampDay,
  type Day,
  dayFromSerial,
  dayOf,
  dayParts,
  daysBetween,
  daysInMonth,
  eachDay,
  earliestOf,
  inYear,
  isDay,
  isLeapYear,
  isMonthDay,
  latestOf,
  monthDayOf,
  serialOf,
  weekdayOf,
  weekStart,
  yearOf,
} from '../../src/measures/days.ts';

/** Serials from the year 1 to the end of 9999, the years ISO text can write plainly. */
const serial = fc.integer({ min: -719_162, max: 2_932_896 });
const day = serial.map(dayFromSerial);

/** The same day as luxon sees it, in UTC so that no clock change can shift it. */
function luxonDay(text: Day): DateTime {
  return DateTime.fromISO(text, { zone: 'utc' });
}

describe('leap years', () => {
  // The Gregorian rule as everybody knows it: by four, but not by a hundred, but by four hundred.
  it.each([
    [2028, true],
    [2027, false],
    [2100, false],
    [2000, true],
    [1900, false],
  ])('%i: %s', (year, leap) => {
    expect(isLeapYear(year)).toBe(leap);
    expect(daysInMonth(year, 2)).toBe(leap ? 29 : 28);
  });

  it('agrees with luxon on the days of every month of eight hundred years', () => {
    for (let year = 1600; year < 2400; year += 1)
      for (let month = 1; month <= 12; month += 1)
        expect(daysInMonth(year, month)).toBe(DateTime.utc(year, month).daysInMonth);
  });

  it('gives no days to a month that does not exist', () => {
    expect([daysInMonth(2027, 0), daysInMonth(2027, 13)]).toEqual([0, 0]);
  });
});

describe('reading a day', () => {
  it.each(['2028-02-29', '2000-02-29', '2027-12-31', '2027-01-01', '1600-02-29'])('takes %s', (text) => {
    expect(isDay(text)).toBe(true);
  });

  it.each([
    '2027-02-29',
    '2100-02-29',
    '2027-04-31',
    '2027-00-10',
    '2027-13-01',
    '2027-05-00',
    '2027-5-1',
    '27-05-01',
    '2027/05/01',
    ' 2027-05-01',
    '2027-05-01T00:00',
    '',
  ])('refuses "%s"', (text) => {
    expect(isDay(text)).toBe(false);
  });

  it('takes just what luxon calls valid', () => {
    const twoDigits = fc.integer({ min: 0, max: 40 }).map((n) => String(n).padStart(2, '0'));
    const year = fc.integer({ min: 1, max: 9999 }).map((n) => String(n).padStart(4, '0'));
    fc.assert(
      fc.property(year, twoDigits, twoDigits, (y, m, d) => {
        expect(isDay(`${y}-${m}-${d}`)).toBe(isValidForLuxon(Number(y), Number(m), Number(d)));
      }),
    );
  });

  it('takes a month and day of any year, the leap day too', () => {
    expect(['05-10', '02-29', '12-31'].map(isMonthDay)).toEqual([true, true, true]);
    expect(['02-30', '13-01', '5-10', '2027-05-10', ''].map(isMonthDay)).toEqual([false, false, false, false, false]);
  });
});

function isValidForLuxon(year: number, month: number, dayOfMonth: number): boolean {
  try {
    return DateTime.utc(year, month, dayOfMonth).isValid;
  } catch {
    return false;
  }
}

describe('parts of a day', () => {
  it('takes a day apart and puts it together', () => {
    expect(dayParts('2027-04-18')).toEqual({ year: 2027, month: 4, dayOfMonth: 18 });
    expect(dayOf(2027, 4, 8)).toBe('2027-04-08');
    expect(dayOf(987, 12, 31)).toBe('0987-12-31');
    expect(yearOf('2027-04-18')).toBe(2027);
    expect(monthDayOf('2027-04-18')).toBe('04-18');
  });

  it('puts the leap day into a plain year as the 28th', () => {
    expect(inYear('02-29', 2027)).toBe('2027-02-28');
    expect(inYear('02-29', 2028)).toBe('2028-02-29');
    expect(inYear('07-01', 2027)).toBe('2027-07-01');
  });
});

describe('serial numbers', () => {
  it('start at 0 on 1 January 1970 and go back before it', () => {
    expect([serialOf('1969-12-31'), serialOf('1970-01-01'), serialOf('1970-01-02')]).toEqual([-1, 0, 1]);
  });

  it('agree with the days luxon counts from 1970', () => {
    fc.assert(
      fc.property(serial, (number) => {
        expect(dayFromSerial(number)).toBe(DateTime.fromMillis(number * 86_400_000, { zone: 'utc' }).toISODate());
      }),
    );
  });

  it('lead back to the day they came from', () => {
    fc.assert(
      fc.property(serial, (number) => {
        expect(serialOf(dayFromSerial(number))).toBe(number);
      }),
    );
  });
});

describe('arithmetic on days', () => {
  it.each([
    ['2027-12-31', 1, '2028-01-01'],
    ['2028-01-01', -1, '2027-12-31'],
    ['2028-02-28', 1, '2028-02-29'],
    ['2028-02-29', 1, '2028-03-01'],
    ['2027-02-28', 1, '2027-03-01'],
    ['2028-02-29', 365, '2029-02-28'],
    ['2100-02-28', 1, '2100-03-01'],
    ['2027-04-18', 0, '2027-04-18'],
  ])('%s and %i days is %s', (from, days, to) => {
    expect(addDays(from, days)).toBe(to);
    expect(daysBetween(from, to)).toBe(days);
  });

  it('agrees with luxon over a century either way', () => {
    const days = fc.integer({ min: -36_525, max: 36_525 });
    const here = fc.integer({ min: -36_525, max: 73_050 }).map(dayFromSerial);
    fc.assert(
      fc.property(here, days, (from, count) => {
        expect(addDays(from, count)).toBe(luxonDay(from).plus({ days: count }).toISODate());
      }),
    );
  });

  it('rounds a part of a day down, so that half a day later is the same day', () => {
    expect(addDays('2027-04-18', 2.9)).toBe('2027-04-20');
    expect(addDays('2027-04-18', -0.5)).toBe('2027-04-17');
  });

  it('counts squares of the wall calendar, whatever the clocks do that night', () => {
    // 14 March 2027 has 23 hours in Chicago; 4 April 2027 has 25 in Melbourne (IANA zones, through luxon).
    for (const [zone, from] of [
      ['America/Chicago', '2027-03-14'],
      ['Australia/Melbourne', '2027-04-04'],
    ] as const) {
      const midnight = DateTime.fromISO(from, { zone });
      expect(midnight.plus({ days: 1 }).diff(midnight, 'hours').hours).not.toBe(24);
      expect(addDays(from, 1)).toBe(midnight.plus({ days: 1 }).toISODate());
    }
  });

  it('orders days as text', () => {
    fc.assert(
      fc.property(day, day, (a, b) => {
        expect(a < b).toBe(serialOf(a) < serialOf(b));
      }),
    );
  });
});

describe('days of the week', () => {
  it('start on Monday', () => {
    // 18 April 2027 is a Sunday and 1 January 2000 was a Saturday, by any calendar.
    expect(weekdayOf('2027-04-18')).toBe(7);
    expect(weekdayOf('2000-01-01')).toBe(6);
    expect(weekStart('2027-04-18')).toBe('2027-04-12');
    expect(weekStart('2027-04-12')).toBe('2027-04-12');
  });

  it('agree with luxon, before 1970 too', () => {
    fc.assert(
      fc.property(day, (text) => {
        expect(weekdayOf(text)).toBe(luxonDay(text).weekday);
      }),
    );
  });

  it('find the Monday across New Year', () => {
    expect(weekStart('2028-01-02')).toBe('2027-12-27');
  });
});

describe('choosing among days', () => {
  it('finds the earlier and the later', () => {
    expect(earliestOf('2027-05-02', '2027-05-01', '2028-01-01')).toBe('2027-05-01');
    expect(latestOf('2027-05-02', '2027-05-01', '2028-01-01')).toBe('2028-01-01');
    expect(earliestOf('2027-05-02')).toBe('2027-05-02');
  });

  it('holds a day between two others', () => {
    expect(clampDay('2027-05-09', '2027-05-01', '2027-05-05')).toBe('2027-05-05');
    expect(clampDay('2027-04-09', '2027-05-01', '2027-05-05')).toBe('2027-05-01');
    expect(clampDay('2027-05-03', '2027-05-01', '2027-05-05')).toBe('2027-05-03');
  });

  it('lets the first bound win when the bounds cross', () => {
    expect(clampDay('2027-05-03', '2027-05-09', '2027-05-05')).toBe('2027-05-09');
  });

  it('lists every day of a span with both ends, and none of a crossed one', () => {
    expect(eachDay('2028-02-28', '2028-03-01')).toEqual(['2028-02-28', '2028-02-29', '2028-03-01']);
    expect(eachDay('2027-12-31', '2027-12-31')).toEqual(['2027-12-31']);
    expect(eachDay('2028-01-02', '2028-01-01')).toEqual([]);
    expect(eachDay('2028-01-01', '2028-12-31')).toHaveLength(366);
  });
});
