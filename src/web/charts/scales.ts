/**
 * From amounts and days to places on paper.
 */
import { addDays, type Day, dayOf, dayParts, serialOf } from '../../measures/days.ts';

/** Places of amounts or days, from one end of a line to the other. */
export interface Extent {
  from: number;
  to: number;
}

/** A straight scale from amounts to places. A domain without length lies in the middle. */
export function linearScale(domain: Extent, range: Extent): (value: number) => number {
  const length = domain.to - domain.from;
  if (length === 0) return () => (range.from + range.to) / 2;
  return (value) => range.from + ((value - domain.from) / length) * (range.to - range.from);
}

/** A straight scale from days to places: every day is as wide as every other, in spring too when clocks change. */
export function dayScale(domain: { from: Day; to: Day }, range: Extent): (day: Day) => number {
  const place = linearScale({ from: serialOf(domain.from), to: serialOf(domain.to) }, range);
  return (day) => place(serialOf(day));
}

/** Round amounts inside a domain, as many as wanted or a few less or more: steps of 1, 2 or 5 times a power of ten. */
export function roundTicks({ from, to }: Extent, wanted: number): number[] {
  const raw = (to - from) / wanted;
  if (!(raw > 0)) return [];
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((times) => times * power >= raw * ROUNDING) ?? 10) * power;
  const first = Math.ceil(from / step - SLACK);
  const count = Math.floor(to / step + SLACK) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/** A step may be this much short of the wanted one before the next larger is taken. */
const ROUNDING = 0.85;
/** A tick made by arithmetic may lie a hair outside. */
const SLACK = 1e-9;

/** The first days of the months that begin between two days, both included. */
export function monthStarts(from: Day, to: Day): Day[] {
  const { year, month, dayOfMonth } = dayParts(from);
  const starts: Day[] = [];
  let next = dayOfMonth === 1 ? from : monthAfter(dayOf(year, month, 1));
  while (next <= to) {
    starts.push(next);
    next = monthAfter(next);
  }
  return starts;
}

function monthAfter(first: Day): Day {
  const { year, month } = dayParts(addDays(first, 31));
  return dayOf(year, month, 1);
}
