/**
 * The weekly list as plain text, for a terminal or a printer.
 */
import type { Away } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import { formatDay, readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { supplyLine } from '../schedule/entry-text.ts';
import { firstReasonOf, lastDayOf, needsOf } from './entry-notes.ts';
import type { ChangeGroup } from './recent-changes.ts';
import { moreLine } from './triage.ts';
import { closingElsewhere, isToDo, type ListedDay, type ListedEntry, ridingAlong, type WeekList } from './week-list.ts';
import { daysAhead, hoursText, hourText, type LocalClock, longDay, weekdayName, weekSpan } from './words.ts';
import { wrapped } from './wrapped.ts';

const INDENT = '  ';
/** Lines under an entry stand below its title, past the box to tick. */
const UNDER_BOX = ' '.repeat(6);

/** The list as text, in the reader's units, in lines of at most 80 characters, ending in a line break. */
export function weekListText(list: WeekList, units: UnitSystem): string {
  const section = (heading: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : [heading, ...lines.flatMap((line) => laid(units, line, INDENT, `${INDENT}${INDENT}`))];
  const [told, added] = [list.changes.filter(({ kind }) => kind !== 'added'), list.changes.filter(isAdded)];
  const blocks = [
    [list.gardenName, `Week of ${weekSpan(list.monday, units)}`],
    [...wrapped(hoursLine(list)), ...list.away.flatMap((away) => wrapped(awayLine(away, units)))],
    ...list.days.map((day) => dayBlock(day, { units, timeZone: list.timeZone })),
    emptyBlock(list, units),
    section('To have at hand', list.supplies.map(supplyLine)),
    section('Closing soon', closingLines(list, units)),
    section(
      'Does not fit',
      list.clashes.map(({ title, what }) => readableIn(units, `${title}: ${what}`, list.today)),
    ),
    section('Window closed', missedLines(list, units)),
    section(
      'What moved and why',
      told.map((group) => changeLine(group, list.today, units)),
    ),
    section(
      'New in the plan',
      added.map((group) => changeLine(group, list.today, units)),
    ),
    section(
      'The week after',
      list.next.flatMap((day) => nextLines(day, units)),
    ),
    section('Not known yet', list.unknown),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** Amounts and days are written out first: a marked amount must not be broken over two lines. */
function laid(units: UnitSystem, text: string, indent = '', hanging = indent): string[] {
  return wrapped(readableIn(units, text), indent, hanging);
}

function isAdded({ kind }: ChangeGroup): boolean {
  return kind === 'added';
}

/** The hours of a week: to do, done, and kept for the garden. Empty when nothing is or was to do. */
export function hoursLine({ openMinutes, doneMinutes, keptMinutes }: WeekList): string {
  if (openMinutes + doneMinutes === 0) return '';
  const done = doneMinutes > 0 ? `, ${hoursText(doneMinutes)} done` : '';
  if (keptMinutes === 0) return `${hoursText(openMinutes)} to do${done}, and no work day at home.`;
  const over = openMinutes + doneMinutes - keptMinutes;
  const tooMuch = over > 0 ? ` That is ${hoursText(over)} over: what closes late can wait.` : '';
  return `${hoursText(openMinutes)} to do${done}, of the ${hoursText(keptMinutes)} a week kept for the garden.${tooMuch}`;
}

/** A time away, in a sentence. */
export function awayLine({ from, to }: Away, units: UnitSystem): string {
  return `Away from ${longDay(from, units)} to ${longDay(to, units)}.`;
}

function dayBlock({ day, entries }: ListedDay, clock: LocalClock): string[] {
  return [longDay(day, clock.units), ...entries.flatMap((listed) => entryLines(listed, clock))];
}

function entryLines(listed: ListedEntry, clock: LocalClock): string[] {
  const { entry } = listed;
  const { units } = clock;
  const box = entry.state === 'done' ? '[x]' : isToDo(listed) ? '[ ]' : '[-]';
  const [hour] = listed.tasks.map((task) => hourText(task, clock));
  const title = hour === undefined ? entry.title : `${entry.title}, ${hour}`;
  return [
    ...laid(units, `${box} ${title} (${hoursText(entry.effortMinutes)})`, INDENT, UNDER_BOX),
    ...notesOf(listed, units).flatMap((note) => laid(units, readableIn(units, note, entry.day), UNDER_BOX)),
  ];
}

function notesOf(listed: ListedEntry, units: UnitSystem): string[] {
  const { entry, tasks } = listed;
  if (entry.state === 'done') return [];
  const [latest, needs, why] = [lastDayOf(listed), needsOf(listed), firstReasonOf(listed)];
  return [
    ...(latest === undefined ? [] : [`Last day ${formatDay(latest, units, entry.day)}.`]),
    ...(needs === '' ? [] : [`Needs ${needs}.`]),
    ...ridingAlong(listed).map(({ title }) => `With it: ${title}.`),
    ...tasks.flatMap(({ pinWarning }) => pinWarning ?? []),
    ...(why === undefined ? [] : [`Why: ${why}`]),
  ];
}

function emptyBlock({ days, comes }: WeekList, units: UnitSystem): string[] {
  if (days.length > 0) return [];
  const nothing = 'Nothing asks for you this week.';
  if (comes === undefined) return [nothing];
  const titles = comes.entries.map(({ entry }) => entry.title).join('; ');
  return laid(units, `${nothing} Next comes ${longDay(comes.day, units)}: ${titles}.`);
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

function changeLine({ titles, from, to, because }: ChangeGroup, today: Day, units: UnitSystem): string {
  const [was, is] = [from, to].map((day) => day && formatDay(day, units, today));
  const what =
    was === undefined ? `on ${is}` : is === undefined ? `off the plan; it stood on ${was}` : `from ${was} to ${is}`;
  return `${titles.join('; ')}: ${what}. ${because.join(' ')}`;
}

function nextLines({ day, entries }: ListedDay, units: UnitSystem): string[] {
  return entries.map(({ entry }) => `${weekdayName(day).slice(0, 3)} ${formatDay(day, units)}: ${entry.title}`);
}
