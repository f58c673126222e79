/**
 * What a closed address answers for a while: a calendar with one notice in it. An app that found an error there would
 * go on showing what it last read, and nobody would learn that it is no longer true.
 */
import { addDays, type Day, type Instant } from '../measures/days.ts';
import type { FeedContent } from './render-feed.ts';
import { closedUid } from './uid.ts';

/** Days that the notice is given before the address is as good as unknown. House default: about a month. */
export const GRACE_DAYS = 30;

/** Hours between two looks at a notice that stays as it is. House default. */
const REFRESH_HOURS = 24;

/** An address that no longer opens a feed. */
export interface ClosedFeed {
  gardenId: string;
  feedId: string;
  label: string;
  closedAt: Instant;
  /** Why: it was revoked, it has another address now, its garden was put away, or both of these. */
  why: 'revoked' | 'moved' | 'put away' | 'moved and put away';
}

const WORDS: Readonly<Record<ClosedFeed['why'], { what: string; mend: string }>> = {
  revoked: {
    what: 'It was revoked',
    mend: 'Take this calendar out of the app, unless whoever keeps the garden opens it again, or makes a new feed, on the Feeds page.',
  },
  moved: {
    what: 'It has a new address now',
    mend: 'Copy the new address from the Feeds page and subscribe to that one; then take this calendar out of the app.',
  },
  'put away': {
    what: 'Its garden was put away',
    mend: 'When the garden is given back, on the page of gardens, the work shows here again at this address.',
  },
  'moved and put away': {
    what: 'It was given a new address, and its garden was put away',
    mend: 'Take this calendar out of the app. When the garden is given back, the new address stands on its Feeds page.',
  },
};

/** The moment from which a closed address is no longer answered. */
export function graceEnds(closedAt: Instant): Instant {
  return `${addDays(closedAt.slice(0, 10), GRACE_DAYS)}${closedAt.slice(10)}`;
}

/** The notice calendar of a closed address: the same octets for as long as it is given. Holds no address. */
export function closedFeed({ gardenId, feedId, label, closedAt, why }: ClosedFeed): FeedContent {
  const closedOn: Day = closedAt.slice(0, 10);
  const { what, mend } = WORDS[why];
  const notice = {
    uid: closedUid(gardenId, feedId),
    // From the day before, since "today" may still be yesterday west of Greenwich.
    day: addDays(closedOn, -1),
    until: addDays(closedOn, GRACE_DAYS),
    title: 'This calendar is no longer kept',
    description: `The feed “${label}” is not read at this address any more. ${what}.\n${mend}`,
    categories: [],
    sequence: 0,
    createdAt: closedAt,
    changedAt: closedAt,
  };
  return {
    calendarName: label,
    description: 'A calendar that is no longer kept at this address.',
    events: [notice],
    notice,
    refreshHours: REFRESH_HOURS,
    lastModified: closedAt,
  };
}
