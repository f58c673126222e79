/**
 * When the reminder of an event comes.
 */
import { addDays, earliestOf, type Instant } from '../measures/days.ts';
import type { FeedShape } from './feed-shape.ts';
import type { FeedEvent } from './render-feed.ts';
import { zonedHour } from './zoned-hour.ts';

/**
 * The moment of a reminder: the evening before an event's day or the morning of it, at the hour of the garden's own clock,
 * and never later than the work itself. A moment rather than a span before the event: a span before an all-day event is
 * counted from midnight where the reader happens to be (RFC 5545, 3.8.6.3).
 */
export function alarmAt({ day, at }: FeedEvent, alarm: FeedShape['alarm'], timeZone: string): Instant | undefined {
  if (alarm === null) return undefined;
  const moment = zonedHour(timeZone, alarm.when === 'evening' ? addDays(day, -1) : day, alarm.hour);
  return at === undefined ? moment : earliestOf(moment, at.from);
}
