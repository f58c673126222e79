/**
 * GET /feed/<token>.ics: the calendar feed itself, for whoever holds its address.
 */
import { Hono } from 'hono';
import { answerConditional } from '../calendar/etag.ts';
import { httpDate } from '../calendar/http-date.ts';
import type { Steward } from '../steward/steward.ts';

/** Seconds a calendar app may use its copy without asking. House default: a plan is not expected to change faster. */
const MAX_AGE_SECONDS = 300;

/** The feed route. An unknown address and a revoked one are told apart by nothing. */
export function feedRoute(steward: Steward): Hono {
  return new Hono().get('/feed/:file', async (c) => {
    const token = /^([A-Za-z0-9_-]{1,128})\.ics$/.exec(c.req.param('file'))?.[1];
    const feed = token === undefined ? undefined : await steward.feedBody(token);
    if (feed === undefined) return c.text('No calendar is kept at this address.\n', 404);
    const headers = {
      ETag: feed.etag,
      'Last-Modified': httpDate(feed.changedAt),
      'Cache-Control': `private, max-age=${MAX_AGE_SECONDS}`,
      'X-Robots-Tag': 'noindex, nofollow',
    };
    const status = answerConditional({
      ifNoneMatch: c.req.header('if-none-match'),
      ifModifiedSince: c.req.header('if-modified-since'),
      etag: feed.etag,
      changedAt: feed.changedAt,
    });
    if (status === 304) return c.body(null, 304, headers);
    return c.body(feed.body, 200, {
      ...headers,
      'Content-Type': 'text/calendar; charset=utf-8',
      'Content-Disposition': 'inline; filename="loamtide.ics"',
    });
  });
}
