/**
 * The weekly list as plain text, for a terminal, a printer or the plain part of a mail.
 */
import { readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { entryNotes } from './entry-notes.ts';
import type { ListLinks } from './list-links.ts';
import { cautionsOf, type EntryCautions } from './week-cautions.ts';
import { isToDo, type ListedDay, type ListedEntry, type WeekList } from './week-list.ts';
import { awayLine, daySum, emptyLine, hoursLine, weekSections } from './week-sections.ts';
import { hoursText, hourText, type LocalClock, longDay, weekSpan } from './words.ts';
import { wrapped } from './wrapped.ts';

const INDENT = '  ';
/** Lines under an entry stand below its title, past the box to tick. */
const UNDER_BOX = ' '.repeat(6);

interface Writing extends LocalClock {
  cautions: ReadonlyMap<string, EntryCautions>;
  links: ListLinks | undefined;
}

/**
 * The list as text, in the reader's units, in lines of at most 80 characters, ending in a line break. An address longer
 * than that stands on a line of its own.
 */
export function weekListText(list: WeekList, units: UnitSystem, links?: ListLinks): string {
  const writing: Writing = { units, timeZone: list.timeZone, cautions: cautionsOf(list), links };
  const blocks = [
    [titleLine(list), `Week of ${weekSpan(list.monday, units)}`],
    [...wrapped(hoursLine(list)), ...list.away.flatMap((away) => wrapped(awayLine(away, units)))],
    ...list.days.map((day) => dayBlock(day, writing)),
    wrapped(emptyLine(list, units)),
    ...weekSections(list, units).map(({ heading, lines }) => [
      ...wrapped(heading),
      ...lines.flatMap((line) => wrapped(line, INDENT, `${INDENT}${INDENT}`)),
    ]),
    links === undefined ? [] : wrapped(`To stop this mail: ${links.stop}`),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

/** The garden, and whom the list is for. */
export function titleLine({ gardenName, person }: Pick<WeekList, 'gardenName' | 'person'>): string {
  return person === undefined ? gardenName : `${gardenName}, for ${person}`;
}

function dayBlock(listed: ListedDay, writing: Writing): string[] {
  const sum = daySum(listed, isToDo);
  const head = `${longDay(listed.day, writing.units)}${sum === '' ? '' : ` (${sum})`}`;
  return [head, ...listed.entries.flatMap((entry) => entryLines(entry, writing))];
}

function entryLines(listed: ListedEntry, writing: Writing): string[] {
  const { entry } = listed;
  const { units, cautions, links } = writing;
  const box = entry.state === 'done' ? '[x]' : isToDo(listed) ? '[ ]' : '[-]';
  const [hour] = listed.tasks.map((task) => hourText(task, writing));
  const title = readableIn(units, hour === undefined ? entry.title : `${entry.title}, ${hour}`, entry.day);
  return [
    ...wrapped(`${box} ${title} (${hoursText(entry.effortMinutes)})`, INDENT, UNDER_BOX),
    ...entryNotes(listed, units, cautions.get(entry.lotId)).flatMap(({ text }) => wrapped(text, UNDER_BOX)),
    ...(links === undefined || !isToDo(listed) ? [] : answerLines(listed, links)),
  ];
}

/** One address an entry: its page offers all three answers. */
function answerLines({ tasks: [first] }: ListedEntry, links: ListLinks): string[] {
  if (first === undefined) return [];
  return wrapped(`Done, not yet or skip: ${links.answer(first.key)}`, UNDER_BOX);
}
