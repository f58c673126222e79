/**
 * The web view on a port of this computer.
 */
import { isIP } from 'node:net';
import { type ServerType, serve } from '@hono/node-server';
import type { Hono } from 'hono';

export interface Listening {
  hostname: string;
  port: number;
  /** Whether the household has a password: without one only this computer is listened to. */
  hasPassword?: boolean;
}

/**
 * Refuses to listen where others could come in unasked: the pages change the garden.
 *
 * @param hasPassword whether the household has one, so that others are asked for it
 * @throws {RangeError} unless the name is a loopback one, or an address of this computer and there is a password
 */
export function assertBindable(hostname: string, hasPassword = false): void {
  if (isLoopbackName(hostname) || (hasPassword && isIP(hostname) !== 0)) return;
  throw new RangeError(`Cannot listen on "${hostname}": ${hasPassword ? NOT_IN_NUMBERS : NO_PASSWORD}`);
}

const NO_PASSWORD =
  'others on the network could change the garden, and there is no password yet. Set one with "loamtide password", or use ' +
  '127.0.0.1. To let phones read the feeds alone, put a reverse proxy in front and name it in LOAMTIDE_PUBLIC_URL.';

const NOT_IN_NUMBERS = 'give an address of this computer in numbers, such as 192.168.1.20, or 0.0.0.0 for all of them.';

/** Whether a name to listen on is one that only this computer reaches. */
export function isLoopbackName(hostname: string): boolean {
  return hostname === 'localhost' || hostname === '::1' || (isIP(hostname) === 4 && /^127\./.test(hostname));
}

/** Starts listening. Settles once the port is open, and fails when it cannot be opened. */
export async function serveApp(
  app: Pick<Hono, 'fetch'>,
  { hostname, port, hasPassword }: Listening,
): Promise<ServerType> {
  assertBindable(hostname, hasPassword);
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, hostname, port }, () => {
      server.off('error', reject);
      resolve(server);
    });
    server.once('error', reject);
  });
}
