/**
 * The demo garden's year written month by month: every calendar entry of twelve months as the program plans it.
 */
import { type Day, dayParts, weekStart } from '../../src/measures/days.ts';
import { formatDay, readableIn } from '../../src/measures/quantity.ts';
import { PRACTICE_WORDS } from '../../src/schedule/entry-text.ts';
import type { Entry } from '../../src/schedule/plan.ts';
import { demoPlan } from './demo-plan.ts';

/** The months' names, January first, as the program writes them. */
const MONTHS = Array.from({ length: 12 }, (_, month) =>
  formatDay(`2027-${String(month + 1).padStart(2, '0')}-01`, 'metric').slice(2),
);

/** The day the demo garden is laid on for the reading: what it plans from there is the whole of that year. */
export const READING_DAY: Day = '2027-01-01';

/** The open entries of the year, as planned on its first day. */
export async function entriesOfTheYear(): Promise<Entry[]> {
  const plan = await demoPlan(READING_DAY);
  const { year } = dayParts(READING_DAY);
  return plan.entries.filter(({ day, state }) => state === 'open' && dayParts(day).year === year);
}

/** Entries by month, January first. */
export function byMonth(entries: readonly Entry[]): Entry[][] {
  return MONTHS.map((_, index) => entries.filter(({ day }) => dayParts(day).month === index + 1));
}

/** Entries in each week that has some, busiest first. */
export function weekCounts(entries: readonly Entry[]): number[] {
  const weeks = new Map<Day, number>();
  for (const { day } of entries) weeks.set(weekStart(day), (weeks.get(weekStart(day)) ?? 0) + 1);
  return [...weeks.values()].sort((a, b) => b - a);
}

/** The year as the page shows it: a table a month. */
export function yearInMonths(entries: readonly Entry[]): string {
  return byMonth(entries)
    .map((rows, index) => [`## ${MONTHS[index]}`, '', '| day | entry | practice |', '|---|---|---|', ...rows.map(row)])
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function row({ day, title, practice }: Entry): string {
  return `| ${formatDay(day, 'us')} | ${readableIn('us', title, day)} | ${PRACTICE_WORDS[practice]} |`;
}
