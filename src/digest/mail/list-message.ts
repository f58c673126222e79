/**
 * A weekly list as a mail message: its headers and its two bodies, as data. Nothing here sends or encodes.
 */
import type { Instant } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { WeekList } from '../week-list.ts';
import { hoursText, weekSpan } from '../words.ts';

/** Somebody with a mail address. */
interface Correspondent {
  name: string;
  address: string;
}

/** A message ready to be encoded. */
export interface ListMessage {
  from: Correspondent;
  to: Correspondent;
  subject: string;
  /** With its angle brackets. */
  messageId: string;
  date: Instant;
  /** Headers besides those above, each on one line. */
  headers: Readonly<Record<string, string>>;
  text: string;
  html: string;
}

/** What a message is made of. */
export interface ListMail {
  list: WeekList;
  units: UnitSystem;
  text: string;
  html: string;
  /** Address the list comes from; its name is the garden's. */
  from: string;
  to: Correspondent;
  messageId: string;
  date: Instant;
  /** Address that stops the list, where one can be reached from outside. */
  stop?: string | undefined;
}

/** The message that carries a list to a member. */
export function listMessage({ list, units, from, stop, ...given }: ListMail): ListMessage {
  return {
    ...given,
    from: { name: oneLine(list.gardenName), address: from },
    to: { ...given.to, name: oneLine(given.to.name) },
    subject: oneLine(subjectOf(list, units)),
    headers: {
      // RFC 3834, 5: nobody wrote this by hand, so that no absence is answered to it.
      'Auto-Submitted': 'auto-generated',
      'List-Id': `<${list.gardenId}.week.${domainOf(from)}>`,
      ...stopHeaders(stop),
    },
  };
}

/** The garden, the week and its hours: what tells one list from another in a row of them. */
function subjectOf({ gardenName, monday, openMinutes }: WeekList, units: UnitSystem): string {
  const hours = openMinutes === 0 ? 'nothing to do' : `${hoursText(openMinutes)} to do`;
  return `${gardenName}: ${weekSpan(monday, units)}, ${hours}`;
}

/** A header is one line: what breaks lines or steers a terminal has no place in it. */
function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
}

/** RFC 2369, 3.2, and RFC 8058, 3.1: one press in the mail program stops the list, but only over a secret line. */
function stopHeaders(stop: string | undefined): Record<string, string> {
  if (stop === undefined) return {};
  const address = { 'List-Unsubscribe': `<${stop}>` };
  return stop.startsWith('https:') ? { ...address, 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' } : address;
}

/** The part of a mail address after the @. */
export function domainOf(address: string): string {
  return address.slice(address.lastIndexOf('@') + 1).toLowerCase();
}
