/**
 * What is asked of a request without making more of it than is needed.
 */
import type { HttpBindings } from '@hono/node-server';
import type { Context } from 'hono';
import { countedBy } from './network.ts';

/** A request that may have come over a socket, or straight from a test. */
export type ClientContext = Context<{ Bindings: Partial<HttpBindings> }>;

/** A header as it came. Node has read it already; asking the standard way would copy them all first. */
export function headerOf(c: ClientContext, name: string): string | undefined {
  const headers = c.env?.incoming?.headers;
  if (headers === undefined) return c.req.header(name);
  const value = headers[name];
  return Array.isArray(value) ? value.join(', ') : value;
}

/** Who asks, by the address they are counted by; see sign-in/caller.ts. */
export function clientOf(c: ClientContext): string {
  return countedBy(c.get('caller').address);
}
