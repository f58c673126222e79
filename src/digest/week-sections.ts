/**
 * What stands in a weekly list besides its days, as headings with lines: the same in plain text and in mail.
 */
import type { Away } from '../garden/garden.ts';
import { capital } from '../measures/capital.ts';
import type { Day } from '../measures/days.ts';
import { formatDay, readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { supplyLine } from '../schedule/entry-text.ts';
import { becauseText, type ChangeGroup, laterLine } from './recent-changes.ts';
import { moreLine } from './triage.ts';
import { closingElsewhere, type ListedDay, type WeekList } from './week-list.ts';
import { dayAt, daysAhead, fullDay, hoursText, longDay, weekdayName } from './words.ts';

/** What a section is about. */
export type SectionName =
  | 'at-hand'
  | 'to-get'
  | 'closing'
  | 'overloads'
  | 'clashes'
  | 'missed'
  | 'changes'
  | 'added'
  | 'next'
  | 'unknown';

/** A heading and its lines, in the reader's units; never without lines. */
export interface WeekSection {
  name: SectionName;
  heading: string;
  lines: readonly string[];
}

/** The sections of a list in the order they are read; those without anything to say are left out. */
export function weekSections(list: WeekList, units: UnitSystem): WeekSection[] {
  const { changes, today } = list;
  const lines = (group: ChangeGroup) => changeLine(group, today, units);
  const sections: WeekSection[] = [
    { name: 'at-hand', heading: 'To have at hand', lines: list.supplies.map(supplyLine) },
    { name: 'to-get', heading: 'To buy or gather for the week after', lines: list.toGet.map(supplyLine) },
    { name: 'closing', heading: 'Closing soon', lines: closingLines(list, units) },
    {
      name: 'overloads',
      heading: 'More than the hours',
      lines: list.overloads.map(({ sentences }) => sentences.join(' ')),
    },
    { name: 'clashes', heading: 'Does not fit', lines: list.clashes.map(({ title, what }) => `${title}: ${what}`) },
    { name: 'missed', heading: 'Window closed', lines: missedLines(list, units) },
    {
      name: 'changes',
      heading: changesHeading(list, units),
      lines: [...changes.filter(({ kind }) => kind !== 'added').map(lines), ...laterLines(list)],
    },
    { name: 'added', heading: 'New in the plan', lines: changes.filter(({ kind }) => kind === 'added').map(lines) },
    { name: 'next', heading: 'The week after', lines: list.next.flatMap((day) => nextLines(day, units)) },
    { name: 'unknown', heading: 'Not known yet', lines: list.unknown },
  ];
  return sections
    .filter((section) => section.lines.length > 0)
    .map((section) => ({ ...section, lines: section.lines.map((line) => readableIn(units, line, today)) }));
}

/** Names the last list where one went out, so that nobody wonders since when. */
export function changesHeading({ since, timeZone }: Pick<WeekList, 'since' | 'timeZone'>, units: UnitSystem): string {
  return since === undefined
    ? 'What moved and why'
    : `What moved since the last list, of ${fullDay(dayAt(since, timeZone), units)}, and why`;
}

/** The hours of a week: to do, done, and kept for the garden. Empty when nothing is or was to do. */
export function hoursLine(list: WeekList): string {
  const { openMinutes, doneMinutes, keptMinutes, householdMinutes, person } = list;
  if (openMinutes + doneMinutes === 0) return '';
  const done = doneMinutes > 0 ? `, ${hoursText(doneMinutes)} done` : '';
  const toDo = `${hoursText(openMinutes)} to do${done}`;
  const shared = person === undefined ? '' : `, of the household's ${hoursText(householdMinutes)}`;
  if (keptMinutes === 0) return `${toDo}${shared}, and no work day at home.`;
  if (person !== undefined) return `${toDo}${shared}; ${hoursText(keptMinutes)} a week are kept for the garden.`;
  const over = openMinutes + doneMinutes - keptMinutes;
  const tooMuch = over > 0 ? ` That is ${hoursText(over)} over.` : '';
  return `${toDo}, of the ${hoursText(keptMinutes)} a week kept for the garden.${tooMuch}`;
}

/** A time away, in a sentence. */
export function awayLine({ from, to }: Away, units: UnitSystem): string {
  return `Away from ${longDay(from, units)} to ${longDay(to, units)}.`;
}

/** What an empty week says instead of its days; nothing where there are some. */
export function emptyLine({ days, next, comes, monday }: WeekList, units: UnitSystem): string {
  if (days.length > 0) return '';
  const nothing = 'Nothing asks for you this week.';
  if (comes === undefined || next.length > 0) return nothing;
  const titles = comes.entries.map(({ entry }) => entry.title).join('; ');
  return readableIn(units, `${nothing} Next comes ${longDay(comes.day, units, monday)}: ${titles}.`, comes.day);
}

/** The hours of a day that has more than one entry; what is done or past is not counted. */
export function daySum({ entries }: ListedDay, isCounted: (row: ListedDay['entries'][number]) => boolean): string {
  const counted = entries.filter(isCounted);
  if (counted.length < 2) return '';
  return hoursText(counted.reduce((sum, { entry }) => sum + entry.effortMinutes, 0));
}

function closingLines(list: WeekList, units: UnitSystem): string[] {
  return closingElsewhere(list).map(
    ({ title, latest, daysLeft }) =>
      `${title}: last day ${formatDay(latest, units, list.today)}, ${daysAhead(daysLeft)}.`,
  );
}

function missedLines({ triage, today }: WeekList, units: UnitSystem): string[] {
  const lines = triage.lines.map(
    ({ title, latest, missedNote }) => `${title}: closed ${formatDay(latest, units, today)}. ${missedNote}`,
  );
  return [...lines, moreLine(triage)].filter((line) => line !== '');
}

/** What happened to the tasks of a group, and why. */
function changeLine(group: ChangeGroup, today: Day, units: UnitSystem): string {
  const { titles, from, to } = group;
  const [was, is] = [from, to].map((day) => day && formatDay(day, units, today));
  const what =
    was === undefined ? `on ${is}` : is === undefined ? `off the plan; it stood on ${was}` : `from ${was} to ${is}`;
  return `${capital(titles.join('; '))}: ${what}. ${becauseText(group)}`.trim();
}

function laterLines({ laterChanges }: WeekList): string[] {
  const line = laterLine(laterChanges);
  return line === '' ? [] : [`${line}: the page "This week" tells them all.`];
}

function nextLines({ day, entries }: ListedDay, units: UnitSystem): string[] {
  return entries.map(({ entry }) => `${weekdayName(day).slice(0, 3)} ${formatDay(day, units)}: ${entry.title}`);
}
