/**
 * Whether a week's sheet fits on one page: its lines counted as they will break, for no script may look at the page.
 */
import type { EntryNote, NoteKind } from './entry-notes.ts';
import type { SectionName } from './week-sections.ts';

/** The size of the letters: see the sheet's rules in the stylesheet. */
export type SheetSize = 'large' | 'middle' | 'small';

/** Sections whose lines are set in a row on paper: things, which need no line each. */
export const IN_ONE_LINE: ReadonlySet<SectionName> = new Set(['at-hand', 'to-get']);

/** Notes that are set in a row on paper: one line each would fill a sheet with white. */
export const IN_A_ROW: ReadonlySet<NoteKind> = new Set(['whose', 'order', 'last-day', 'needs', 'rides', 'pin']);

/** What is counted of a sheet. */
interface Counted {
  size: SheetSize;
  days: readonly { entries: readonly CountedEntry[] }[];
  sections: readonly { name: SectionName; lines: readonly string[] }[];
}

interface CountedEntry {
  listed: { entry: { title: string } };
  notes: readonly EntryNote[];
  /** Amounts that it has room to write down. */
  asks: number;
}

interface Room {
  /** Lines on the page. */
  lines: number;
  /** Characters on a line beside a day's date, and in one of the two columns below the days. */
  inDay: number;
  inColumn: number;
}

/**
 * What the smaller of A4 and US Letter holds in each size, a tenth less than measured in a browser: another machine may
 * set it in a wider letter.
 */
const ROOM: Readonly<Record<SheetSize, Room>> = {
  large: { lines: 50, inDay: 80, inColumn: 46 },
  middle: { lines: 56, inDay: 92, inColumn: 53 },
  small: { lines: 62, inDay: 104, inColumn: 60 },
};

/** Lines of the sheet's head, of a heading with its space, of a date, and between two entries. */
const HEAD_LINES = 4;
const HEADING_LINES = 1.8;
const DATE_LINES = 3;
const GAP_LINES = 0.5;
/** Lines of a row of amounts really used, which needs room to write; and characters of one, its blank among them. */
const ASKING_LINES = 1.5;
const ASKING_CHARACTERS = 46;

/** Whether a sheet fits on one page of A4 and of US Letter. */
export function sheetRoom(sheet: Counted): boolean {
  return sheetLines(sheet) <= ROOM[sheet.size].lines;
}

/** The lines a sheet takes. */
export function sheetLines({ days, sections, size }: Counted): number {
  const { inDay, inColumn } = ROOM[size];
  const dayLines = days.map(({ entries }) => {
    const lines = entries.map((entry) => entryLines(entry, inDay));
    return Math.max(DATE_LINES, sum(lines)) + GAP_LINES;
  });
  const sectionLines = sections.map(({ name, lines }) => {
    const laid = IN_ONE_LINE.has(name) ? [lines.join('; ')] : lines;
    return HEADING_LINES + sum(laid.map((line) => broken(line, inColumn)));
  });
  // A section is not broken, so that one column may stand longer than the other.
  return HEAD_LINES + sum(dayLines) + Math.max(sum(sectionLines) / 2, ...sectionLines);
}

/** One line of practice and hours, the title, then its notes as the sheet gathers them. */
function entryLines({ listed, notes, asks }: CountedEntry, inDay: number): number {
  const row = notes.filter(({ kind }) => IN_A_ROW.has(kind)).map(({ text }) => text);
  const own = notes.filter(({ kind }) => !IN_A_ROW.has(kind)).map(({ text }) => text);
  const noted = sum([row.join(' '), ...own].map((text) => broken(text, inDay)));
  return (
    1 +
    broken(listed.entry.title, inDay) +
    noted +
    Math.ceil(asks / Math.floor(inDay / ASKING_CHARACTERS)) * ASKING_LINES +
    GAP_LINES
  );
}

function broken(text: string, characters: number): number {
  return Math.ceil(text.length / characters);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
