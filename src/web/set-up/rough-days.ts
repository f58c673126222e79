/**
 * Days told roughly: the beginning, the middle or the end of a month.
 */
import { addDays, type Day, dayOf, dayParts } from '../../measures/days.ts';
import { MONTHS } from '../../measures/quantity.ts';

/** Parts of a month with the day that stands for each. House default: the middle of each third. */
const PARTS = [
  { word: 'early', dayOfMonth: 5 },
  { word: 'middle of', dayOfMonth: 15 },
  { word: 'late', dayOfMonth: 25 },
] as const;

/** Months offered back and ahead: a crop over winter was sown within them, and a plan reaches no further. House defaults. */
const MONTHS_BACK = 14;
const MONTHS_AHEAD = 10;

/** A rough day as a form offers it. */
export interface RoughDay {
  day: Day;
  words: string;
}

/** Every rough day around today, oldest first. */
export function roughDays(today: Day): RoughDay[] {
  const { year, month } = dayParts(today);
  return Array.from({ length: MONTHS_BACK + MONTHS_AHEAD + 1 }, (_, i) => {
    const count = year * 12 + (month - 1) - MONTHS_BACK + i;
    const at = { year: Math.floor(count / 12), month: (count % 12) + 1 };
    return PARTS.map(({ word, dayOfMonth }) => ({
      day: dayOf(at.year, at.month, dayOfMonth),
      words: `${word} ${MONTHS[at.month - 1]} ${at.year}`,
    }));
  }).flat();
}

/** Days back that a lasting crop may have been planted: thirty years. House default. */
const DAYS_BACK = 30 * 366;

/** First and last day a set-up takes: all that is offered roughly, and further back for crops that last. */
export function daysTaken(today: Day): { from: Day; to: Day } {
  return { from: addDays(today, -DAYS_BACK), to: addDays(today, 31 * (MONTHS_AHEAD + 1)) };
}
