/**
 * Dates in HTTP headers: written in the one form that may be sent, read in the three that may arrive (RFC 9110, 5.6.7).
 */
import { dayOf, type Instant, isDay } from '../measures/days.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const TIME = '(?<time>(?:[01]\\d|2[0-3]):[0-5]\\d:[0-5]\\d)';

/** IMF-fixdate, RFC 850 and asctime, in this order. */
const FORMS = [
  new RegExp(`^[A-Z][a-z]{2}, (?<date>\\d{2}) (?<month>[A-Z][a-z]{2}) (?<year>\\d{4}) ${TIME} GMT$`),
  new RegExp(`^[A-Z][a-z]{5,8}, (?<date>\\d{2})-(?<month>[A-Z][a-z]{2})-(?<year>\\d{2}) ${TIME} GMT$`),
  new RegExp(`^[A-Z][a-z]{2} (?<month>[A-Z][a-z]{2}) (?<date>[ \\d]\\d) ${TIME} (?<year>\\d{4})$`),
];

/** Years ahead from which a year of two digits is read as one of the century before. */
const TWO_DIGIT_YEARS_AHEAD = 50;

/** A moment to the whole second: "Sun, 18 Apr 2027 09:30:00 GMT". */
export function httpDate(instant: Instant): string {
  return new Date(instant).toUTCString();
}

/** The moment a header's date names, or nothing where it names none. `near` settles the century of two-digit years. */
export function readHttpDate(text: string, near: Instant): Instant | undefined {
  const parts = FORMS.map((form) => form.exec(text)?.groups).find((groups) => groups !== undefined);
  if (!parts) return undefined;
  const { year = '', month = '', date = '', time = '' } = parts;
  const day = dayOf(fullYear(year, Number(near.slice(0, 4))), MONTHS.indexOf(month) + 1, Number(date));
  return isDay(day) ? `${day}T${time}.000Z` : undefined;
}

function fullYear(digits: string, nearYear: number): number {
  if (digits.length === 4) return Number(digits);
  const year = nearYear - (nearYear % 100) + Number(digits);
  return year > nearYear + TWO_DIGIT_YEARS_AHEAD ? year - 100 : year;
}
