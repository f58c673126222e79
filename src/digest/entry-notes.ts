/**
 * What stands quietly under an entry of the week: until when it may be done, what the day must be like, and why then.
 */
import { capital } from '../measures/capital.ts';
import type { Day } from '../measures/days.ts';
import { formatDay, readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { reasonSentence } from '../schedule/explain.ts';
import type { PlannedTask } from '../schedule/plan.ts';
import { isOrder } from './to-get.ts';
import type { EntryCautions } from './week-cautions.ts';
import { isToDo, type ListedEntry, ridingAlong } from './week-list.ts';
import { CONDITION_WORDS, longDay } from './words.ts';

/** What a line under an entry is about. */
export type NoteKind = 'whose' | 'order' | 'last-day' | 'closed' | 'needs' | 'rides' | 'caution' | 'pin' | 'why';

/** A line under an entry, in the reader's units. */
export interface EntryNote {
  kind: NoteKind;
  text: string;
}

/** The lines under an entry in the order they are read; none under what is done. */
export function entryNotes(listed: ListedEntry, units: UnitSystem, cautions?: EntryCautions): EntryNote[] {
  const { entry, tasks } = listed;
  if (entry.state === 'done') return [];
  const [latest, needs, why] = [lastDayOf(listed), needsOf(listed), firstReasonOf(listed)];
  const note = (kind: NoteKind, text: string): EntryNote => ({ kind, text: readableIn(units, text, entry.day) });
  return [
    ...(listed.whose === undefined ? [] : [note('whose', listed.whose)]),
    ...tasks.flatMap(orderStep).map((step) => note('order', step)),
    ...(latest === undefined ? [] : [note('last-day', `Last day ${formatDay(latest, units, entry.day)}.`)]),
    ...closedNotes(listed, units).map((text) => note('closed', text)),
    ...(needs === '' ? [] : [note('needs', `Needs ${needs}.`)]),
    ...ridingAlong(listed).map(({ title }) => note('rides', `With it: ${title}.`)),
    ...(isToDo(listed) ? cautionLines(cautions, entry.day, units) : []).map((line) => note('caution', line)),
    ...[...new Set(tasks.flatMap(({ pinWarning }) => pinWarning ?? []))].map((warning) => note('pin', warning)),
    ...(why === undefined ? [] : [note('why', `Why: ${why}`)]),
  ];
}

/** When the window of what is late or past closed, each day with its beds where they differ, and what is lost by it. */
export function closedNotes({ entry, tasks }: ListedEntry, units: UnitSystem): string[] {
  const late = entry.state === 'lapsed' ? tasks.filter(({ state }) => state === 'lapsed') : [];
  const notes = [...new Set(late.map(({ missedNote }) => missedNote))];
  return notes.map((missedNote) => {
    const alike = late.filter((task) => task.missedNote === missedNote);
    const days = [...new Set(alike.map(({ window }) => window.latest))].sort();
    const named = days.map((day) => {
      const of = alike.filter(({ window }) => window.latest === day).map(({ subject }) => placeName(subject));
      return `${formatDay(day, units, entry.day)}${days.length > 1 ? ` (${[...new Set(of)].join(', ')})` : ''}`;
    });
    return `Its window closed ${named.join(', ')}. ${missedNote}`;
  });
}

function placeName(subject: PlannedTask['subject']): string {
  return 'bedName' in subject ? (subject.bedName ?? subject.name) : subject.name;
}

/** What to order, where no supply says it: a title names the first few only. */
function orderStep(task: PlannedTask): string[] {
  return isOrder(task) && task.supplies.length === 0 ? task.steps.slice(0, 1) : [];
}

function cautionLines(cautions: EntryCautions | undefined, day: Day, units: UnitSystem): string[] {
  if (cautions === undefined) return [];
  const { told, asOn } = cautions;
  const as = asOn.map((earlier) => (earlier === day ? 'above' : `on ${longDay(earlier, units)}`)).join(' and ');
  const repeated = as === '' ? '' : told.length === 0 ? `Take care as ${as}.` : `And as ${as}.`;
  return told.length === 0 ? [repeated] : [`Take care. ${[...told, repeated].join(' ').trim()}`];
}

/** The first last day of its tasks; nothing where it is done, or where that day has passed. */
function lastDayOf({ entry, tasks }: ListedEntry): Day | undefined {
  if (entry.state === 'done' || entry.state === 'lapsed') return undefined;
  return tasks.map(({ window }) => window.latest).sort()[0];
}

/** What the day must be like, in a row: "a dry day, air above freezing"; empty where any will do. */
function needsOf({ tasks }: ListedEntry): string {
  return [...new Set(tasks.flatMap(({ needs }) => needs))].map((need) => CONDITION_WORDS[need]).join(', ');
}

/** The first reason of the work itself; its own page and the calendar tell them all. May hold marked amounts. */
export function firstReasonOf({ tasks: [first] }: ListedEntry): string | undefined {
  const reason = first?.reasons[0];
  return reason === undefined ? undefined : reasonSentence(reason);
}

/** How free its day is: "Any day to 14 June; needs a dry day." Empty for what is done and needs nothing any more. */
export function leewayLine(listed: ListedEntry, units: UnitSystem): string {
  if (listed.entry.state === 'done') return '';
  const needs = needsOf(listed);
  const parts = [daysLeft(listed, units), needs === '' ? '' : `needs ${needs}`].filter((part) => part !== '');
  const line = parts.join('; ');
  return line === '' ? '' : `${capital(line)}.`;
}

function daysLeft(listed: ListedEntry, units: UnitSystem): string {
  const { day } = listed.entry;
  const last = lastDayOf(listed);
  if (last === undefined || last < day) return '';
  if (last > day) return `any day to ${formatDay(last, units, day)}`;
  const only = listed.tasks.every(({ window }) => window.earliest === window.latest);
  return only ? 'this day only' : 'this is its last day';
}
