/**
 * Events written as to-dos, by ical.js: ical-generator has none.
 */
import ICAL from 'ical.js';
import type { Day, Instant } from '../measures/days.ts';
import type { FeedEvent } from './render-feed.ts';
import { cleanText, cleanTexts, contentLines, sentLines } from './repair.ts';
import { todoUid } from './uid.ts';

const MS_PER_MINUTE = 60_000;

const FINISHED_PERCENT = 100;

/** An event's lines as a to-do (RFC 5545, 3.6.2), ready to stand in a feed. */
export function renderTodo(event: FeedEvent): string {
  return sentLines(contentLines(todo(event).toString()));
}

function todo(event: FeedEvent): ICAL.Component {
  const made = new ICAL.Component('vtodo');
  const put = (name: string, value: string | number | ICAL.Time) => made.addPropertyWithValue(name, value);
  put('uid', todoUid(event.uid));
  put('sequence', event.sequence);
  put('dtstamp', moment(event.changedAt));
  put('created', moment(event.createdAt));
  put('last-modified', moment(event.changedAt));
  // Without a start, which would have to be earlier: a to-do due on a day is due by its end (3.8.2.3).
  put('due', event.at === undefined ? wholeDay(event.day) : moment(endOf(event.at)));
  put('summary', cleanText(event.title));
  put('description', cleanText(event.description));
  const categories = cleanTexts(event.categories);
  if (categories.length > 0) made.addProperty(categoriesOf(categories));
  if (event.url !== undefined) put('url', new URL(event.url).href);
  put('status', event.done === true ? 'COMPLETED' : 'NEEDS-ACTION');
  if (event.done === true) {
    put('percent-complete', FINISHED_PERCENT);
    put('completed', moment(completedAt(event)));
  }
  if (event.alarm !== undefined) made.addSubcomponent(alarmOf(event, event.alarm));
  return made;
}

function categoriesOf(categories: readonly string[]): ICAL.Property {
  const made = new ICAL.Property('categories');
  made.setValues([...categories]);
  return made;
}

function alarmOf({ title }: FeedEvent, at: Instant): ICAL.Component {
  const made = new ICAL.Component('valarm');
  made.addPropertyWithValue('action', 'DISPLAY');
  made.addPropertyWithValue('trigger', moment(at));
  made.addPropertyWithValue('description', cleanText(title));
  return made;
}

/** Only the day of finished work is known: its noon is written, which is that day on most clocks. */
function completedAt({ day }: FeedEvent): Instant {
  return `${day}T12:00:00.000Z`;
}

function endOf({ from, minutes }: { from: Instant; minutes: number }): Instant {
  return new Date(new Date(from).valueOf() + minutes * MS_PER_MINUTE).toISOString();
}

function wholeDay(day: Day): ICAL.Time {
  return ICAL.Time.fromDateString(day);
}

function moment(instant: Instant): ICAL.Time {
  return ICAL.Time.fromJSDate(new Date(instant), true);
}
