/**
 * GET /feed/<token>.ics: the calendar feed itself, for whoever holds its address.
 */
import { performance } from 'node:perf_hooks';
import type { Handler } from 'hono';
import { answerConditional } from '../../calendar/etag.ts';
import { type Log, stackOf } from '../../log/log.ts';
import type { FeedBody, Steward } from '../../steward/doings/steward.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { clientKind } from '../requests/client-kind.ts';
import { ownNames, SAFETY_HEADERS } from '../requests/guard.ts';
import { type ClientContext, clientOf, headerOf } from '../requests/request.ts';
import { noteRequest, requestIdOf } from '../requests/request-log.ts';
import { WrongTokens } from '../requests/wrong-tokens.ts';
import { throughTrusted } from '../sign-in/caller.ts';
import { chosenCoding, codedFeed } from './feed-answer.ts';

/** The pattern of a feed's address. */
export const FEED_ROUTE = '/feed/:file';

const NO_FEED = 'No calendar is kept at this address.\n';

/** What the feed route works with. */
export interface FeedRoom {
  steward: Steward;
  settings: WebSettings;
  log: Log;
}

/**
 * Answers with the feed, ahead of everything that pages need, and leaves all else to what comes after: another name than
 * ours, and addresses without a feed.
 *
 * A fault with not even a last good text to send is answered like an unknown address and told of where the program runs:
 * at an error of the server's, 500 or 503, a widespread calendar app stops reading for good; at 404 it keeps what it has.
 */
export function knownFeed({ steward, settings, log }: FeedRoom): Handler {
  const [isOwn, isBelieved] = [ownNames(settings), throughTrusted(settings)];
  return async (c, next) => {
    const token = tokenIn(c.req.param('file') ?? '');
    if (token === undefined || !isOwn((headerOf(c, 'host') ?? '').toLowerCase())) return next();
    const [id, began] = [requestIdOf(c, isBelieved(c)), performance.now()];
    const noted = (answer: Response): Response => {
      noteRequest(log, { c, id, began, route: FEED_ROUTE, status: answer.status });
      return answer;
    };
    try {
      const feed = await steward.feedBody(token, clientKind(headerOf(c, 'user-agent') ?? ''));
      return feed === undefined ? next() : noted(await sent(c, feed));
    } catch (fault) {
      log.error('feed could not be made', { id, fault: stackOf(fault) });
      const headers = { ...SAFETY_HEADERS, 'Content-Type': 'text/plain; charset=UTF-8', 'Cache-Control': 'no-store' };
      return noted(new Response(NO_FEED, { status: 404, headers }));
    }
  };
}

/** Answers where there is no feed. An unknown address and one closed long ago are told apart by nothing. */
export function noFeed(wrong = new WrongTokens()): Handler {
  return (c) => {
    const waitSeconds = wrong.count(clientOf(c));
    if (waitSeconds === undefined) return c.text(NO_FEED, 404);
    return c.text('Too many addresses without a calendar were tried.\n', 429, { 'Retry-After': String(waitSeconds) });
  };
}

function tokenIn(file: string): string | undefined {
  return /^([A-Za-z0-9_-]{1,128})\.ics$/.exec(file)?.[1];
}

function sent(c: ClientContext, feed: FeedBody): Response | Promise<Response> {
  const { etag, unchangedHeaders, whole } = codedFeed(feed, chosenCoding(headerOf(c, 'accept-encoding') ?? ''));
  const status = answerConditional({
    ifNoneMatch: headerOf(c, 'if-none-match'),
    ifModifiedSince: headerOf(c, 'if-modified-since'),
    etag,
    changedAt: feed.changedAt,
  });
  if (status === 304) return new Response(null, { status, headers: unchangedHeaders });
  return whole().then(({ octets, headers }) => new Response(octets, { status, headers }));
}
