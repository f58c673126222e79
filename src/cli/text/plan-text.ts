/**
 * A span of a plan as plain text, month by month.
 */
import { fullDay, hoursText, hourText, weekdayName } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Garden } from '../../garden/garden.ts';
import { type Day, dayParts } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { tasksOf } from '../../schedule/entry-text.ts';
import type { Entry, Plan } from '../../schedule/plan.ts';

/** As wide as the day before a title. */
const HANGING = ' '.repeat(10);

const STATE_MARKS: Readonly<Record<Entry['state'], string>> = {
  open: '',
  done: 'done: ',
  skipped: 'skipped: ',
  lapsed: 'window closed: ',
};

/** The entries of a plan by month, each with its day, its time and the last day of its window. */
export function planLines({ name, place }: Garden, plan: Plan, { from, to }: { from: Day; to: Day }): string[] {
  const { units } = place;
  const lines = [name, `${fullDay(from, units)} to ${fullDay(to, units)}`];
  if (plan.entries.length === 0) return [...lines, '', 'Nothing is planned on these days.'];
  let month = '';
  for (const entry of plan.entries) {
    if (entry.day.slice(0, 7) !== month) {
      month = entry.day.slice(0, 7);
      lines.push('', monthName(entry.day));
    }
    const text = `${STATE_MARKS[entry.state]}${entry.title}${hourOf(plan, entry, place)} (${hoursText(entry.effortMinutes)})${lastDay(plan, entry, units)}`;
    lines.push(...wrapped(readableIn(units, text), `  ${dayLabel(entry.day)}  `, HANGING));
  }
  return lines;
}

function hourOf(plan: Plan, entry: Entry, place: Garden['place']): string {
  const [hour] = tasksOf(plan, entry).map((task) => hourText(task, place));
  return hour === undefined ? '' : `, ${hour}`;
}

function monthName(day: Day): string {
  return `${formatDay(day, 'metric').replace(/^\d+ /, '')} ${dayParts(day).year}`;
}

function dayLabel(day: Day): string {
  return `${weekdayName(day).slice(0, 3)} ${String(dayParts(day).dayOfMonth).padStart(2)}`;
}

function lastDay(plan: Plan, entry: Entry, units: UnitSystem): string {
  if (entry.state !== 'open') return '';
  const [latest] = tasksOf(plan, entry)
    .map(({ window }) => window.latest)
    .sort();
  return latest === undefined ? '' : `, last day ${formatDay(latest, units, entry.day)}`;
}
