import { describe, expect, it } from 'vitest';
import { httpDate, readHttpDate } from '../../src/calendar/http-date.ts';

const near = '2027-04-18T00:00:00.000Z';

describe('httpDate', () => {
  it('writes the form that RFC 9110, 5.6.7 prefers', () => {
    expect(httpDate('1994-11-06T08:49:37.000Z')).toBe('Sun, 06 Nov 1994 08:49:37 GMT');
  });
});

describe('readHttpDate', () => {
  it('reads the example of RFC 9110, 5.6.7 in all three forms', () => {
    for (const text of [
      'Sun, 06 Nov 1994 08:49:37 GMT',
      'Sunday, 06-Nov-94 08:49:37 GMT',
      'Sun Nov  6 08:49:37 1994',
    ]) {
      expect(readHttpDate(text, near)).toBe('1994-11-06T08:49:37.000Z');
    }
  });

  it('reads back what it wrote on a leap day', () => {
    expect(readHttpDate(httpDate('2028-02-29T23:59:59.700Z'), near)).toBe('2028-02-29T23:59:59.000Z');
  });

  it('reads a year of two digits as this century until it lies more than 50 years ahead', () => {
    expect(readHttpDate('Tuesday, 01-Jan-77 00:00:00 GMT', near)).toBe('2077-01-01T00:00:00.000Z');
    expect(readHttpDate('Tuesday, 01-Jan-78 00:00:00 GMT', near)).toBe('1978-01-01T00:00:00.000Z');
  });

  it.each([
    '',
    'yesterday',
    '2027-04-18',
    'Sun, 30 Feb 2027 08:00:00 GMT',
    'Sun, 06 Nov 1994 25:00:00 GMT',
    'Sun, 06 Xyz 1994 08:49:37 GMT',
  ])('finds no date in "%s"', (text) => expect(readHttpDate(text, near)).toBeUndefined());
});
