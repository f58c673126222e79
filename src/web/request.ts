/**
 * What is asked of a request without making more of it than is needed.
 */
import type { HttpBindings } from '@hono/node-server';
import type { Context } from 'hono';

/** A request that may have come over a socket, or straight from a test. */
export type ClientContext = Context<{ Bindings: Partial<HttpBindings> }>;

/** A header as it came. Node has read it already; asking the standard way would copy them all first. */
export function headerOf(c: ClientContext, name: string): string | undefined {
  const headers = c.env?.incoming?.headers;
  if (headers === undefined) return c.req.header(name);
  const value = headers[name];
  return Array.isArray(value) ? value.join(', ') : value;
}

/**
 * Who asks, by address. The port is open to this computer alone, so what comes through a proxy of its own carries the
 * reader's address as the last of X-Forwarded-For.
 */
export function clientOf(c: ClientContext): string {
  const forwarded = headerOf(c, 'x-forwarded-for')?.split(',').at(-1)?.trim();
  return (forwarded ?? c.env?.incoming?.socket.remoteAddress ?? '').slice(0, 100);
}
