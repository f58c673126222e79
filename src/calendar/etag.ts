/**
 * Conditional requests: whether a calendar app that already holds a feed needs it sent again (RFC 9110, 8.8 and 13).
 */
import { createHash } from 'node:crypto';
import type { Instant } from '../measures/days.ts';
import { readHttpDate } from './http-date.ts';

/** The headers of a request and the state of the feed it asks for. */
export interface Condition {
  /** If-None-Match as it came. */
  ifNoneMatch: string | undefined;
  /** If-Modified-Since as it came. */
  ifModifiedSince: string | undefined;
  etag: string;
  changedAt: Instant;
}

/** A strong entity tag: equal for equal octets and for nothing else (8.8.3). */
export function strongEtag(body: string): string {
  return `"${createHash('sha256').update(body).digest('base64url')}"`;
}

/**
 * The status to answer a GET or HEAD with: 304 when the asker's copy is still good. If-None-Match, where it was sent,
 * decides alone (13.2.2); it is compared weakly (13.1.2). A date that cannot be read is as good as none (13.1.3).
 */
export function answerConditional({ ifNoneMatch, ifModifiedSince, etag, changedAt }: Condition): 200 | 304 {
  if (ifNoneMatch !== undefined) return namesTag(ifNoneMatch, etag) ? 304 : 200;
  const since = ifModifiedSince === undefined ? undefined : readHttpDate(ifModifiedSince, changedAt);
  return since !== undefined && wholeSecond(changedAt) <= since ? 304 : 200;
}

/** No strong tag of ours holds a comma, so that where its quotes and all stand, it stands as a member of the list. */
function namesTag(ifNoneMatch: string, etag: string): boolean {
  return ifNoneMatch.includes(etag) || ifNoneMatch.trim() === '*';
}

/** HTTP dates end at the second, so that is as far as the two are compared. */
function wholeSecond(instant: Instant): Instant {
  return `${instant.slice(0, 19)}.000Z`;
}
