/**
 * A plan as the events of one feed.
 */
import { type Day, type Instant, latestOf, serialOf } from '../measures/days.ts';
import type { UnitSystem } from '../measures/units.ts';
import { entryText } from '../schedule/entry-text.ts';
import type { Entry, Plan } from '../schedule/plan.ts';
import { alarmAt } from './alarm.ts';
import { DONE_MARK, dayEvents } from './day-events.ts';
import { type FeedShape, PLAIN_SHAPE } from './feed-shape.ts';
import { KeptTexts, type Unwritten } from './kept-texts.ts';
import { type FeedEvent, type FeedHead, renderEvent } from './render-feed.ts';
import { renderTodo } from './render-todo.ts';
import { type People, shownEntries } from './shown-entries.ts';
import { feedUid } from './uid.ts';

/** Hours a calendar app may leave between two looks. House default: four looks a day; plans change at night mostly. */
const REFRESH_HOURS = 6;

/** Stands where the id of an entry would: every entry's own id has at least one character. */
const NO_LOT = '';

/** One feed of a garden, as its events are made for it. */
export interface FeedView {
  feedId: string;
  shape: FeedShape;
  /** Times its shape was changed: every event of it is revised with its shape. */
  revision: number;
  /** When its shape last changed, if ever. */
  revisedAt?: Instant;
  /** The zone whose hours its reminders keep. */
  timeZone: string;
  /** Who does what and was given what, for a feed of one person. */
  people?: People;
}

/** The feed that shows a plan as it is. */
export const PLAIN_VIEW: FeedView = { feedId: '', shape: PLAIN_SHAPE, revision: 0, timeZone: 'UTC' };

/** What the feed says for itself and cannot be read from a plan. */
export interface FeedFrame {
  calendarName: string;
  description: string;
  /** What the one event of a feed with nothing else in it says. */
  notice: { title: string; description: string };
  /** The page about an entry, where there is an address that phones can reach. Must hold no secret. */
  pageOf?: (entry: Entry) => string;
}

/** A garden's feed but for when it last changed: its head, and its events as they are sent. */
export interface GardenFeed {
  head: Omit<FeedHead, 'lastModified'>;
  /** One at least: the notice where there is nothing else. */
  eventTexts: readonly string[];
}

/** How one feed is made: for whom, and from which texts that were written before. */
interface Making {
  view?: FeedView;
  /** Texts of the same feed in the same shape; events that are the same as then are not written again. */
  kept?: KeptTexts;
}

/** Everything one feed of a garden shows. */
export function gardenFeed(
  plan: Plan,
  units: UnitSystem,
  { calendarName, description, notice, pageOf }: FeedFrame,
  { view = PLAIN_VIEW, kept = new KeptTexts() }: Making = {},
): GardenFeed {
  const { shape } = view;
  const write = shape.todos ? renderTodo : renderEvent;
  const unwritten: Unwritten[] =
    shape.by === 'job'
      ? inFeedOrder(plan, view).map((entry) => ({
          id: entry.lotId,
          likeness: likenessOf(entry),
          write: () => write(shapedEvent(eventOf(plan, entry, units, pageOf), view)),
        }))
      : feedEventsOf(plan, units, { view, ...(pageOf === undefined ? {} : { pageOf }) }).map((event) => ({
          id: event.uid,
          likeness: JSON.stringify(event),
          write: () => write(event),
        }));
  const texts = kept.textsOf(unwritten);
  return {
    head: { calendarName, description, refreshHours: REFRESH_HOURS },
    eventTexts: texts.length > 0 ? texts : [renderEvent(noticeEvent(plan.gardenId, plan.today, notice))],
  };
}

/** Equal in all that an event is written from: the content a sequence stands for holds texts, state and units. */
function likenessOf({ sequence, changedAt, createdAt, day, practice, content }: Entry): string {
  return [sequence, changedAt, createdAt, day, practice, content].join('\n');
}

/** The events of a feed by day: one an entry, or one a day. */
export function feedEventsOf(
  plan: Plan,
  units: UnitSystem,
  { view = PLAIN_VIEW, pageOf }: { view?: FeedView; pageOf?: FeedFrame['pageOf'] } = {},
): FeedEvent[] {
  const { shape, feedId } = view;
  const written = (entries: readonly Entry[]) => entries.map((entry) => eventOf(plan, entry, units, pageOf));
  const events =
    shape.by === 'day'
      ? dayEvents(plan, written(shownEntries(plan, shape, view.people)), feedId).sort(byDayThenUid)
      : written(inFeedOrder(plan, view));
  return events.map((event) => shapedEvent(event, view));
}

function inFeedOrder(plan: Plan, { shape, people }: FeedView): Entry[] {
  return shownEntries(plan, shape, people)
    .map((entry) => ({ entry, day: entry.day, uid: feedUid(plan.gardenId, entry.lotId) }))
    .sort(byDayThenUid)
    .map(({ entry }) => entry);
}

function eventOf(plan: Plan, entry: Entry, units: UnitSystem, pageOf: FeedFrame['pageOf']): FeedEvent {
  const { title, description, categories } = entryText(plan, entry, units);
  return {
    uid: feedUid(plan.gardenId, entry.lotId),
    day: entry.day,
    ...(entry.at === undefined ? {} : { at: entry.at }),
    title,
    ...(entry.state === 'done' ? { done: true } : {}),
    description,
    categories,
    sequence: entry.sequence,
    createdAt: entry.createdAt,
    changedAt: entry.changedAt,
    ...(pageOf === undefined ? {} : { url: pageOf(entry) }),
  };
}

/** An event with what the shape adds to it, revised when the shape was. */
function shapedEvent(event: FeedEvent, { shape, revision, revisedAt, timeZone }: FeedView): FeedEvent {
  const alarm = event.done === true ? undefined : alarmAt(event, shape.alarm, timeZone);
  return {
    ...event,
    title: event.done === true && !shape.todos ? `${DONE_MARK}${event.title}` : event.title,
    ...(alarm === undefined ? {} : { alarm }),
    sequence: event.sequence + revision,
    changedAt: revisedAt === undefined ? event.changedAt : latestOf(event.changedAt, revisedAt),
  };
}

/**
 * A notice that stands on today. It moves with the days, so its revision is the day's own serial number: raised by
 * each move and the same for the same day.
 */
export function noticeEvent(gardenId: string, today: Day, text: FeedFrame['notice']): FeedEvent {
  const startOfDay: Instant = `${today}T00:00:00.000Z`;
  return {
    uid: feedUid(gardenId, NO_LOT),
    day: today,
    title: text.title,
    description: text.description,
    categories: [],
    sequence: serialOf(today),
    createdAt: startOfDay,
    changedAt: startOfDay,
  };
}

function byDayThenUid(a: Pick<FeedEvent, 'day' | 'uid'>, b: Pick<FeedEvent, 'day' | 'uid'>): number {
  return compare(a.day, b.day) || compare(a.uid, b.uid);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
