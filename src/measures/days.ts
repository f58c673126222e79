/**
 * Calendar days as plain ISO text, "2027-04-18", in the garden's own zone.
 *
 * Nothing here knows a clock or a time zone: a day is a square on the wall calendar, and arithmetic on days counts
 * squares. ISO text compares in calendar order, so `<` and `>` work on days as they stand.
 */

/** An ISO calendar date, "2027-04-18". Always of a real date: read outside text with {@link isDay} first. */
export type Day = string;

/** A month and day without a year, "05-10". */
export type MonthDay = string;

/** A moment as ISO text in UTC with a trailing Z, "2027-04-18T09:30:00.000Z". */
export type Instant = string;

/** Day of the week, 1 Monday … 7 Sunday (ISO 8601). */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

const DAY_SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Whether a year has a 29 February in the Gregorian calendar. */
export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Days in a month, 1 January … 12 December. */
export function daysInMonth(year: number, month: number): number {
  const usual = DAYS_IN_MONTH[month - 1] ?? 0;
  return month === 2 && isLeapYear(year) ? 29 : usual;
}

/** Whether text is a real calendar date written YYYY-MM-DD ("2027-02-29" is not). */
export function isDay(text: string): boolean {
  const match = DAY_SHAPE.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

/** Whether text is a real month and day written MM-DD; 02-29 counts as real. */
export function isMonthDay(text: string): boolean {
  return /^\d{2}-\d{2}$/.test(text) && isDay(`2000-${text}`);
}

/** Year, month (1–12) and day of month of a day. */
export function dayParts(day: Day): { year: number; month: number; dayOfMonth: number } {
  return { year: Number(day.slice(0, 4)), month: Number(day.slice(5, 7)), dayOfMonth: Number(day.slice(8, 10)) };
}

/** The day made of its parts. */
export function dayOf(year: number, month: number, dayOfMonth: number): Day {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}

/** The calendar year of a day. */
export function yearOf(day: Day): number {
  return dayParts(day).year;
}

/** Month and day of a day, "05-10". */
export function monthDayOf(day: Day): MonthDay {
  return day.slice(5);
}

/** A month and day put in a year; 02-29 becomes 02-28 where the year has none. */
export function inYear(monthDay: MonthDay, year: number): Day {
  const usual = monthDay === '02-29' && !isLeapYear(year) ? '02-28' : monthDay;
  return `${String(year).padStart(4, '0')}-${usual}`;
}

/**
 * Serial number of a day: 0 on 1970-01-01, counted on the proleptic Gregorian calendar.
 * Years run from 1 March inside the sum, so the leap day comes last and needs no special case.
 */
export function serialOf(day: Day): number {
  const known = serials.get(day);
  if (known !== undefined) return known;
  const serial = counted(day);
  if (serials.size >= SERIALS_REMEMBERED) serials.clear();
  serials.set(day, serial);
  return serial;
}

/** Days counted before: the same few thousand are asked for over and over. */
const serials = new Map<Day, number>();
/** House default: the days of a century, and half as many again. */
const SERIALS_REMEMBERED = 54_000;

function counted(day: Day): number {
  const { year, month, dayOfMonth } = dayParts(day);
  const marchYear = month <= 2 ? year - 1 : year;
  const marchMonth = (month + 9) % 12;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * marchMonth + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** The day with a serial number; the inverse of {@link serialOf}. */
export function dayFromSerial(serial: number): Day {
  const shifted = serial + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const dayOfMonth = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return dayOf(yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, dayOfMonth);
}

/** The day `days` squares later on the calendar (earlier when negative). Fractions are rounded down. */
export function addDays(day: Day, days: number): Day {
  return dayFromSerial(serialOf(day) + Math.floor(days));
}

/** Squares from one day to another; positive when `to` is later. */
export function daysBetween(from: Day, to: Day): number {
  return serialOf(to) - serialOf(from);
}

/** The earlier of some days. */
export function earliestOf(first: Day, ...others: Day[]): Day {
  return [first, ...others].sort()[0] ?? first;
}

/** The later of some days. */
export function latestOf(first: Day, ...others: Day[]): Day {
  return [first, ...others].sort().at(-1) ?? first;
}

/** A day held between two others; `from` wins when they cross. */
export function clampDay(day: Day, from: Day, to: Day): Day {
  return latestOf(from, earliestOf(day, to));
}

/** Day of the week, 1 Monday … 7 Sunday. */
export function weekdayOf(day: Day): Weekday {
  const offset = (((serialOf(day) + 3) % 7) + 7) % 7;
  return (offset + 1) as Weekday;
}

/** The Monday of the week a day falls in. */
export function weekStart(day: Day): Day {
  return addDays(day, 1 - weekdayOf(day));
}

/** Every day from one to another, both included; empty when they cross. */
export function eachDay(from: Day, to: Day): Day[] {
  const days: Day[] = [];
  for (let serial = serialOf(from); serial <= serialOf(to); serial += 1) days.push(dayFromSerial(serial));
  return days;
}
