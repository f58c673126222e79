import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import { addDays, dayOf } from '../../src/measures/days.ts';

/** What a calendar app sees of an event. */
export interface SeenEvent {
  uid: string;
  day: string;
  lastDay: string;
  title: string;
  description: string;
  categories: string[];
  sequence: number;
  changed: string;
}

/** The events that ical.js finds, in feed order. */
export function seenByIcalJs(body: string): SeenEvent[] {
  return eventComponents(body).map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      day: event.startDate.toString(),
      lastDay: addDays(event.endDate.toString(), -1),
      title: event.summary,
      description: event.description ?? '',
      categories: (component.getFirstProperty('categories')?.getValues() ?? []).map(String),
      sequence: event.sequence,
      changed: String(component.getFirstPropertyValue('last-modified')),
    };
  });
}

/** The names of the properties each event has for ical.js, so that one too many or too few shows. */
export function propertyNames(body: string): string[][] {
  return eventComponents(body).map((component) => component.getAllProperties().map((property) => property.name));
}

function eventComponents(body: string) {
  return new ICAL.Component(ICAL.parse(body)).getAllSubcomponents('vevent');
}

/** The events that node-ical finds, in feed order. */
export function seenByNodeIcal(body: string): SeenEvent[] {
  return Object.values(nodeIcal.sync.parseICS(body)).flatMap((part) => {
    if (part?.type !== 'VEVENT' || !part.end) return [];
    return [
      {
        uid: part.uid,
        day: localDay(part.start),
        lastDay: addDays(localDay(part.end), -1),
        title: plain(part.summary),
        description: plain(part.description),
        categories: part.categories ?? [],
        sequence: part.sequence ?? -1,
        changed: part.lastmodified?.toISOString().replace('.000', '') ?? '',
      },
    ];
  });
}

/** node-ical gives a date as midnight in the zone of the process. */
function localDay(date: Date): string {
  return dayOf(date.getFullYear(), date.getMonth() + 1, date.getDate());
}

function plain(value: string | { val: string } | undefined): string {
  return typeof value === 'object' ? value.val : (value ?? '');
}
