/**
 * The web view on a port of this computer.
 */
import { isIP } from 'node:net';
import { type ServerType, serve } from '@hono/node-server';
import type { Hono } from 'hono';

export interface Listening {
  hostname: string;
  port: number;
}

/**
 * Refuses to listen where others could come in: the pages change the garden, and no password exists to tell who asks.
 *
 * @throws {RangeError} unless the name is a loopback one
 */
export function assertBindable(hostname: string): void {
  const isLoopback =
    hostname === 'localhost' || hostname === '::1' || (isIP(hostname) === 4 && /^127\./.test(hostname));
  if (isLoopback) return;
  throw new RangeError(
    `Cannot listen on "${hostname}": others on the network could change the garden, and there is no password yet. ` +
      'Use 127.0.0.1. To let phones read the feeds, put a reverse proxy in front and name it in LOAMTIDE_PUBLIC_URL.',
  );
}

/** Starts listening. Settles once the port is open, and fails when it cannot be opened. */
export async function serveApp(app: Pick<Hono, 'fetch'>, { hostname, port }: Listening): Promise<ServerType> {
  assertBindable(hostname);
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, hostname, port }, () => {
      server.off('error', reject);
      resolve(server);
    });
    server.once('error', reject);
  });
}
