/**
 * A feed's text with its validators, renewed only when something in it is new.
 */
import type { Instant } from '../measures/days.ts';
import { strongEtag } from './etag.ts';
import { type FeedContent, renderFeed } from './render-feed.ts';

/** A feed's text, its entity tag, and when anything in it last changed. */
export interface FeedText {
  body: string;
  etag: string;
  changedAt: Instant;
}

/**
 * The feed as it is now. Unless something it shows has changed, that is the previous text, octet for octet and with
 * its old date: so that an app asking "anything new?" hears no, and one that goes by dates never misses an entry that
 * left. `now` is read only when something did change.
 */
export function renewedFeed(
  previous: FeedText | undefined,
  content: Omit<FeedContent, 'lastModified'>,
  now: Instant,
): FeedText {
  if (previous && renderFeed({ ...content, lastModified: previous.changedAt }) === previous.body) return previous;
  const body = renderFeed({ ...content, lastModified: now });
  return { body, etag: strongEtag(body), changedAt: now };
}
