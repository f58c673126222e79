/**
 * What stands quietly under an entry of the week: until when it may be done, what the day must be like, and why then.
 */
import { capital } from '../measures/capital.ts';
import type { Day } from '../measures/days.ts';
import { formatDay } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { reasonSentence } from '../schedule/explain.ts';
import type { ListedEntry } from './week-list.ts';
import { CONDITION_WORDS } from './words.ts';

/** The first last day of its tasks; nothing where it is done, or where that day has passed. */
export function lastDayOf({ entry, tasks }: ListedEntry): Day | undefined {
  if (entry.state === 'done' || entry.state === 'lapsed') return undefined;
  return tasks.map(({ window }) => window.latest).sort()[0];
}

/** What the day must be like, in a row: "a dry day, air above freezing"; empty where any will do. */
export function needsOf({ tasks }: ListedEntry): string {
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
