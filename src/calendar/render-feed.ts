/**
 * A calendar feed as RFC 5545 text: events that keep their identity and rise in revision when they change, all-day ones
 * but for work that has its hour.
 *
 * Every octet comes from what is handed in. No clock is read, and no zone: a day is written from its UTC midnight and an
 * hour as its UTC moment, which ical-generator prints with UTC getters as long as neither calendar nor event is given a
 * zone.
 */
import ical, { ICalAlarmType, ICalEventTransparency } from 'ical-generator';
import { addDays, type Day, type Instant } from '../measures/days.ts';
import { cleanText, cleanTexts, contentLines, escapedText, sentLines } from './repair.ts';

/** Name of the writer (RFC 5545, 3.7.3); the library puts the leading hyphen. */
const PRODUCT_ID = '//Loamtide//Garden plan//EN';

/** Colour a calendar app may give the calendar: a CSS name, as RFC 7986, 5.9 asks. House default. */
const COLOUR = 'olivedrab';

const EVENT_BEGINS = 'BEGIN:VEVENT';
const CALENDAR_ENDS = 'END:VCALENDAR';

/** Stands where an event's description goes: the library folds a text character by character, and these are long. */
const STAND_IN = '-';

const SECONDS_PER_HOUR = 3600;
const MS_PER_MINUTE = 60_000;

/** One line in a calendar: a day or several, or an hour. */
export interface FeedEvent {
  /** Stays the same for as long as the event lives; see uid.ts. */
  uid: string;
  day: Day;
  /** The last day of it, included, when it runs over several. */
  until?: Day;
  /** The hour, for work that has one: the event is then no all-day one. */
  at?: { from: Instant; minutes: number };
  title: string;
  /** Plain text, lines parted by LF. */
  description: string;
  categories: readonly string[];
  /** Set when the work is finished. */
  done?: boolean;
  /** When a reminder comes, where one is wanted. */
  alarm?: Instant;
  /** A page about it. Must hold no secret. */
  url?: string;
  /** Raised whenever anything shown of it changes. */
  sequence: number;
  createdAt: Instant;
  changedAt: Instant;
}

/** What a feed says of the calendar as a whole. */
export interface FeedHead {
  calendarName: string;
  description: string;
  /** How long a calendar app may leave between two looks, in whole hours. */
  refreshHours: number;
  /** When anything in the feed last changed. */
  lastModified: Instant;
}

/** Everything a feed shows. */
export interface FeedContent extends FeedHead {
  events: readonly FeedEvent[];
  /** Shown alone when there are no events: some calendar apps refuse, or ignore, a feed that has become empty. */
  notice: FeedEvent;
}

/** The feed's text, ready to send as `text/calendar; charset=utf-8`. */
export function renderFeed(feed: FeedContent): string {
  const events = feed.events.length > 0 ? feed.events : [feed.notice];
  return feedOf(feed, events.map(renderEvent));
}

/** A feed from events already written. There must be one at least: an empty calendar is refused or ignored by some. */
export function feedOf(head: FeedHead, eventTexts: readonly string[]): string {
  const calendar = ical({
    prodId: PRODUCT_ID,
    name: escapedText(head.calendarName),
    description: escapedText(head.description),
    ttl: head.refreshHours * SECONDS_PER_HOUR,
  });
  const lines = contentLines(calendar.toString());
  const added = [
    `DESCRIPTION:${escapedText(head.description)}`,
    `LAST-MODIFIED:${utcDateTime(head.lastModified)}`,
    `COLOR:${COLOUR}`,
  ];
  const begins = lines.slice(0, lines.lastIndexOf(CALENDAR_ENDS));
  return [sentLines([...begins, ...added]), ...eventTexts, sentLines([CALENDAR_ENDS])].join('');
}

/** One event's lines, ready to stand in a feed. */
export function renderEvent(event: FeedEvent): string {
  const calendar = ical({ prodId: PRODUCT_ID });
  calendar.createEvent(eventData(event));
  const lines = contentLines(calendar.toString());
  const own = lines.slice(lines.indexOf(EVENT_BEGINS), lines.lastIndexOf(CALENDAR_ENDS));
  const description = escapedText(event.description);
  // Before any alarm, which has a description of its own.
  if (description !== '') own[own.indexOf(`DESCRIPTION:${STAND_IN}`)] = `DESCRIPTION:${description}`;
  return sentLines(own);
}

function eventData(event: FeedEvent) {
  return {
    id: escapedText(event.uid),
    sequence: event.sequence,
    stamp: new Date(event.changedAt),
    created: new Date(event.createdAt),
    lastModified: new Date(event.changedAt),
    ...spanOf(event),
    summary: cleanText(event.title),
    ...(escapedText(event.description) === '' ? {} : { description: STAND_IN }),
    categories: cleanTexts(event.categories).map((name) => ({ name })),
    transparency: ICalEventTransparency.TRANSPARENT,
    ...(event.alarm === undefined ? {} : { alarms: [alarmData(event.title, event.alarm)] }),
    ...(event.url === undefined ? {} : { url: new URL(event.url).href }),
  };
}

function alarmData(title: string, at: Instant) {
  return { type: ICalAlarmType.display as const, trigger: new Date(at), description: cleanText(title) };
}

function spanOf({ day, until, at }: FeedEvent): { allDay: boolean; start: Date; end: Date } {
  if (at === undefined) return { allDay: true, start: utcMidnight(day), end: utcMidnight(addDays(until ?? day, 1)) };
  const start = new Date(at.from);
  return { allDay: false, start, end: new Date(start.valueOf() + at.minutes * MS_PER_MINUTE) };
}

function utcMidnight(day: Day): Date {
  return new Date(`${day}T00:00:00Z`);
}

/** A moment in iCalendar's UTC form, "20270418T093000Z". */
function utcDateTime(instant: Instant): string {
  return `${new Date(instant).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
}
