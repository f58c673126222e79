/**
 * The days of a weather file that may be logged as a garden's own weather.
 */
import type { Problem } from '../../garden/problem.ts';
import type { DailyWeather, LoggedDay } from '../../garden/weather.ts';
import type { Day } from '../../measures/days.ts';
import { logSpan } from './reports.ts';

/** How days that cannot be logged are to be told otherwise, in the words of whoever reads the file. */
export interface OtherWays {
  /** For days too long ago. */
  older: string;
  /** For days to come, in a file of what was seen. */
  forecast: string;
}

/** The rows that say something of days that may be logged; the others are a problem each way. */
export function loggable(
  rows: readonly DailyWeather[],
  { kind, today, ways }: { kind: LoggedDay['kind']; today: Day; ways: OtherWays },
): { days: readonly LoggedDay[]; problems: readonly Problem[] } {
  const { from, to } = logSpan(kind, today);
  const measured = rows.filter((row) => Object.keys(row).length > 1);
  const [early, late] = [measured.filter(({ day }) => day < from), measured.filter(({ day }) => day > to)];
  const empty: Problem[] =
    measured.length > 0
      ? []
      : [{ where: 'the file', what: 'measures nothing.', mend: 'Give a figure a day at least.' }];
  return {
    days: measured.filter(({ day }) => day >= from && day <= to).map((row) => ({ ...row, kind })),
    problems: [
      ...outside(early, `before ${from}`, `Give days from ${from} on; ${ways.older}`),
      ...outside(late, `after ${to}`, kind === 'observed' ? ways.forecast : `Give days up to ${to}.`),
      ...empty,
    ],
  };
}

function outside(rows: readonly DailyWeather[], where: string, mend: string): Problem[] {
  if (rows.length === 0) return [];
  const span = rows.length === 1 ? rows[0]?.day : `${rows[0]?.day} to ${rows.at(-1)?.day}`;
  const count = rows.length === 1 ? '1 day' : `${rows.length} days`;
  return [{ where: span ?? '', what: `${count} ${where} cannot be logged.`, mend }];
}
