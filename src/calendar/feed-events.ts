/**
 * Which of a plan's entries a calendar shows, and as what.
 */
import { addDays, type Day, type Instant, serialOf } from '../measures/days.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { entryText } from '../schedule/entry-text.ts';
import type { Entry, Plan } from '../schedule/plan.ts';
import { KeptTexts } from './kept-texts.ts';
import { type FeedEvent, type FeedHead, renderEvent } from './render-feed.ts';
import { feedUid } from './uid.ts';

/** Days that work still to be done stays in the feed after its day. House default: one week to catch up. */
const UNDONE_SHOWN_DAYS = 7;

/** Days ahead that the feed reaches. House default: the coming twelve months, a leap day included. */
const DAYS_AHEAD = 366;

/** Days that finished work stays in the feed after the day it was done. House default: about a month to look back. */
const DONE_SHOWN_DAYS = 30;

/** What the title of finished work begins with. */
const DONE_MARK = 'Done: ';

/** Hours a calendar app may leave between two looks. House default: four looks a day; plans change at night mostly. */
const REFRESH_HOURS = 6;

/** Stands where the id of an entry would: every entry's own id has at least one character. */
const NO_LOT = '';

/** What the feed says for itself and cannot be read from a plan. */
export interface FeedFrame {
  gardenName: string;
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

/** Everything a garden's feed shows. Events of which `kept` holds the text are not written again. */
export function gardenFeed(plan: Plan, units: UnitSystem, frame: FeedFrame, kept = new KeptTexts()): GardenFeed {
  const write = (entry: Entry) => renderEvent(feedEvent(plan, entry, units, frame.pageOf));
  const texts = kept.textsOf(inFeedOrder(plan), write);
  return {
    head: { calendarName: frame.gardenName, description: frame.description, refreshHours: REFRESH_HOURS },
    eventTexts: texts.length > 0 ? texts : [renderEvent(noticeEvent(plan.gardenId, plan.today, frame.notice))],
  };
}

/**
 * The entries a calendar shows, by day: open ones and missed ones that should still be done, from a week back to a
 * year ahead; finished ones for a month, marked as such. Skipped entries, and missed ones that are past mending or
 * replaced by other work, leave.
 */
export function feedEventsOf(plan: Plan, units: UnitSystem, pageOf?: (entry: Entry) => string): FeedEvent[] {
  return inFeedOrder(plan).map((entry) => feedEvent(plan, entry, units, pageOf));
}

function inFeedOrder(plan: Plan): Entry[] {
  return shownEntries(plan)
    .map((entry) => ({ entry, uid: feedUid(plan.gardenId, entry.lotId) }))
    .sort((a, b) => compare(a.entry.day, b.entry.day) || compare(a.uid, b.uid))
    .map(({ entry }) => entry);
}

/** The entries a feed shows as of a day, in the order of the plan. */
export function shownEntries(plan: Plan, today = plan.today): Entry[] {
  const drafts = new Map<TaskKey, TaskDraft>(plan.tasks.map((task) => [task.key, task]));
  return plan.entries.filter((entry) => isShown(entry, today, drafts));
}

function isShown(entry: Entry, today: Day, drafts: ReadonlyMap<TaskKey, TaskDraft>): boolean {
  const shownDays = entry.state === 'done' ? DONE_SHOWN_DAYS : UNDONE_SHOWN_DAYS;
  if (entry.day < addDays(today, -shownDays) || entry.day > addDays(today, DAYS_AHEAD)) return false;
  switch (entry.state) {
    case 'open':
    case 'done':
      return true;
    case 'lapsed':
      return entry.keys.slice(0, 1).every((key) => drafts.get(key)?.ifMissed === 'still do');
    case 'skipped':
      return false;
    default:
      return entry.state satisfies never;
  }
}

function feedEvent(plan: Plan, entry: Entry, units: UnitSystem, pageOf?: (entry: Entry) => string): FeedEvent {
  const { title, description, categories } = entryText(plan, entry, units);
  return {
    uid: feedUid(plan.gardenId, entry.lotId),
    day: entry.day,
    ...(entry.at === undefined ? {} : { at: entry.at }),
    title: entry.state === 'done' ? `${DONE_MARK}${title}` : title,
    description,
    categories,
    sequence: entry.sequence,
    createdAt: entry.createdAt,
    changedAt: entry.changedAt,
    ...(pageOf === undefined ? {} : { url: pageOf(entry) }),
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

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
