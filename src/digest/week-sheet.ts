/**
 * The weekly list on one sheet of paper. Where a week is too full for it the letters grow smaller, and then what can be
 * looked up elsewhere is left out, in a fixed order; never a task, what can hurt, or what cannot wait.
 */
import type { UnitSystem } from '../measures/units.ts';
import type { PlannedTask } from '../schedule/plan.ts';
import { type EntryNote, entryNotes } from './entry-notes.ts';
import { type SheetSize, sheetRoom } from './sheet-room.ts';
import { cautionsOf } from './week-cautions.ts';
import { isToDo, type ListedDay, type ListedEntry, type WeekList } from './week-list.ts';
import { type SectionName, type WeekSection, weekSections } from './week-sections.ts';

/** An entry with its lines. */
export interface SheetEntry {
  listed: ListedEntry;
  notes: readonly EntryNote[];
  /** Amounts really used that it asks for, because later arithmetic counts on them. */
  asks: number;
}

/** A day with its entries. */
export interface SheetDay {
  listed: ListedDay;
  entries: readonly SheetEntry[];
}

/** One week as it is printed. */
export interface WeekSheet {
  size: SheetSize;
  days: readonly SheetDay[];
  sections: readonly WeekSection[];
  /** What was left out for want of room, in words. */
  leftOut: readonly string[];
}

type Spared = SectionName | 'why';

/** What may be left out, first what is missed least: a reason stands on its task's page, the week after comes again. */
const SPARED_IN_ORDER: readonly (readonly [Spared, string])[] = [
  ['why', 'the reasons'],
  ['unknown', 'what is not known yet'],
  ['added', 'what is new in the plan'],
  ['next', 'the week after'],
  ['changes', 'what moved'],
];

/** The sheet of a week, in the reader's units: as full as it can be, then in letters as large as can be. */
export function weekSheet(list: WeekList, units: UnitSystem): WeekSheet {
  const whole = wholeSheet(list, units);
  const sheets = [...SPARED_IN_ORDER.keys(), SPARED_IN_ORDER.length].map((count) => without(whole, count));
  // Reasons are given up before the letters are made as small as they may be.
  const tries = sheets.flatMap((sheet, count) => {
    const sizes: readonly SheetSize[] = count === 0 ? ['large', 'middle'] : ['large', 'middle', 'small'];
    return sizes.map((size): WeekSheet => ({ ...sheet, size }));
  });
  const barest: WeekSheet = { ...without(whole, SPARED_IN_ORDER.length), size: 'small' };
  return tries.find(sheetRoom) ?? barest;
}

function wholeSheet(list: WeekList, units: UnitSystem): Omit<WeekSheet, 'size'> {
  const cautions = cautionsOf(list);
  return {
    days: list.days.map((listed) => ({
      listed,
      entries: listed.entries.map((entry) => ({
        listed: entry,
        notes: entryNotes(entry, units, cautions.get(entry.entry.lotId)),
        asks: isToDo(entry) ? entry.tasks.flatMap(amountsOf).length : 0,
      })),
    })),
    sections: weekSections(list, units),
    leftOut: [],
  };
}

function amountsOf({ makes }: PlannedTask): PlannedTask['makes'] {
  return makes.filter((effect) => 'litres' in effect || 'grams' in effect);
}

function without(sheet: Omit<WeekSheet, 'size'>, count: number): Omit<WeekSheet, 'size'> {
  const spared = SPARED_IN_ORDER.slice(0, count);
  const isSpared = (name: Spared) => spared.some(([each]) => each === name);
  const had = (name: Spared) =>
    sheet.sections.some((section) => section.name === name) ||
    (name === 'why' && sheet.days.some((day) => day.entries.some(({ notes }) => notes.some(isWhy))));
  return {
    days: sheet.days.map((day) => ({
      ...day,
      entries: day.entries.map((entry) => ({
        ...entry,
        notes: isSpared('why') ? entry.notes.filter((note) => !isWhy(note)) : entry.notes,
      })),
    })),
    sections: sheet.sections.filter(({ name }) => !isSpared(name)),
    leftOut: spared.filter(([name]) => had(name)).map(([, words]) => words),
  };
}

function isWhy({ kind }: EntryNote): boolean {
  return kind === 'why';
}
