/**
 * A number for every request, and a line in the log when it is answered.
 */
import { randomUUID } from 'node:crypto';
import { performance } from 'node:perf_hooks';
import type { Context, MiddlewareHandler } from 'hono';
import { matchedRoutes } from 'hono/route';
import type { Log } from '../../log/log.ts';
import { type ClientContext, headerOf } from './request.ts';

declare module 'hono' {
  interface ContextVariableMap {
    /** The number a request goes by in the log, and on pages that tell of trouble. */
    requestId: string;
  }
}

/** Asked for by programs over and over: told only where everything is. */
const FREQUENT = ['/feed/:file', '/health', '/style.css', '/robots.txt'];

/** Longest address shown of a page there is none of, in characters. House default. */
const PATH_CHARACTERS = 120;
/** Longest part shown of such an address, in characters: half a secret is one, too. House default. */
const PART_CHARACTERS = 20;

/** A number a proxy gives: as long as the widespread kinds are, and too short to be taken for a secret. House default. */
const GIVEN_ID = /^[A-Za-z0-9][A-Za-z0-9_-]{7,39}$/;

/**
 * The number of a request: the one it came with in X-Request-Id, where a trusted proxy passed it on, so that a line here is
 * found by its line there; else a new one.
 */
export function requestIdOf(c: ClientContext, isBelieved: boolean): string {
  const given = isBelieved ? headerOf(c, 'x-request-id') : undefined;
  return given !== undefined && GIVEN_ID.test(given) ? given : newRequestId();
}

/** A new number: ten digits in two groups, short enough to be read out. */
function newRequestId(): string {
  const digits = randomUUID().replaceAll('-', '');
  return `${digits.slice(0, 5)}-${digits.slice(5, 10)}`;
}

/**
 * Gives each request its number, tells it to whoever asked, and notes the request once it is answered: by the pattern of
 * its route, since addresses may hold secrets, and never with what follows a question mark. Comes after who asks is known.
 */
export function requestLog(log: Log): MiddlewareHandler {
  return async (c, next) => {
    const id = requestIdOf(c, c.get('caller').isBelieved);
    c.set('requestId', id);
    const began = performance.now();
    await next();
    c.header('X-Request-Id', id);
    noteRequest(log, { c, id, began, route: routeOf(c), status: c.res.status });
  };
}

/** A request that was answered. */
interface Answered {
  c: ClientContext;
  id: string;
  /** When it came, by the clock that only counts on. */
  began: number;
  /** The pattern of its route, where it had one. */
  route: string | undefined;
  status: number;
}

/** Writes the one line of a request. */
export function noteRequest(log: Log, { c, id, began, route, status }: Answered): void {
  const level = status >= 500 ? 'warn' : FREQUENT.includes(route ?? '') ? 'debug' : 'info';
  log[level]('request', {
    method: c.req.method,
    ...(route === undefined ? { path: pathShown(c.req.path) } : { route }),
    garden: route === undefined ? undefined : c.req.param('gardenId'),
    status,
    ms: Math.round(performance.now() - began),
    id,
  });
}

/** The pattern of the route that answered: "/gardens/:gardenId/week". What stands before it belongs to no address. */
function routeOf(c: Context): string | undefined {
  return matchedRoutes(c).findLast(({ method }) => method !== 'ALL')?.path;
}

/** An address that belongs to no route: strangers try such ones, and a mistyped link still holds most of its secret. */
function pathShown(path: string): string {
  const parts = path.split('/').map((part) => (part.length > PART_CHARACTERS ? '…' : part));
  return parts.join('/').slice(0, PATH_CHARACTERS);
}
