/**
 * The web view opened on a port, and closed again.
 */
import { isIPv6 } from 'node:net';
import { hostname as computerName } from 'node:os';
import type { Log } from '../../log/log.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { WebSettings } from '../../web/addresses/settings.ts';
import { createApp } from '../../web/app.tsx';
import { assertBindable, isLoopbackName, serveApp } from '../../web/server.ts';
import { refusal } from '../command-line/refusal.ts';
import { codeOf } from '../files/files.ts';

/** How long requests under way may still take when the program stops. House default. */
const GRACE_MS = 5_000;

/** Addresses that stand for all of this computer, and by which it then reaches itself. */
const ON_ALL: Readonly<Record<string, string>> = { '0.0.0.0': '127.0.0.1', '::': '::1' };

/** Where to listen, and how the pages are reached. */
export interface Door {
  hostname: string;
  /** 0 takes any port that is free. */
  port: number;
  publicUrl?: URL | undefined;
  trustedProxies?: readonly string[] | undefined;
  /** Where requests and faults are told. */
  log: Log;
}

/** An open door. */
export interface OpenDoor {
  /** Address of the pages on this computer. */
  page: URL;
  web: WebSettings;
  /** Lets requests under way finish, and settles when the port is closed. */
  close(): Promise<void>;
}

/**
 * Refuses an address that others can reach while the household has no password.
 *
 * @param where what named the address
 * @throws {InputRefused} with the mend
 */
export async function assertMayListen(steward: Steward, hostname: string, where: string): Promise<void> {
  try {
    assertBindable(hostname, (await steward.lock()) !== undefined);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw refusal('The server was not started.', where, `"${hostname}" cannot be used.`, error.message);
  }
}

type Answer = ReturnType<typeof createApp>['fetch'];

/**
 * Opens the web view.
 *
 * @throws {InputRefused} when the port cannot be had
 */
export async function openDoor(steward: Steward, door: Door): Promise<OpenDoor> {
  const { hostname, port, publicUrl, trustedProxies, log } = door;
  // The pages answer under names that hold the port, and which one it is shows only once it is open.
  let answer: Answer = () => new Response('Not ready yet.\n', { status: 503 });
  const hasPassword = (await steward.lock()) !== undefined;
  const server = await serveApp({ fetch: (...request) => answer(...request) }, { hostname, port, hasPassword }).catch(
    (error) => {
      throw portRefused(codeOf(error), port) ?? error;
    },
  );
  const bound = server.address();
  const seenFromHere = ON_ALL[hostname] ?? hostname;
  const page = new URL(`http://${isIPv6(seenFromHere) ? `[${seenFromHere}]` : seenFromHere}`);
  page.port = String(typeof bound === 'object' && bound !== null ? bound.port : port);
  const isOpenToNetwork = !isLoopbackName(hostname);
  const web: WebSettings = {
    port: Number(page.port || 80),
    hostNames: [page.hostname, ...(isOpenToNetwork ? [computerName(), `${computerName()}.local`] : [])],
    isOpenToNetwork,
    ...(trustedProxies === undefined ? {} : { trustedProxies }),
    ...(publicUrl === undefined ? {} : { publicUrl }),
  };
  answer = createApp({ steward, settings: web, log }).fetch;
  const close = () =>
    new Promise<void>((resolve) => {
      const impatience = setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), GRACE_MS);
      server.close(() => {
        clearTimeout(impatience);
        resolve();
      });
    });
  return { page, web, close };
}

function portRefused(code: string | undefined, port: number) {
  const about = 'The server was not started.';
  if (code === 'EADDRINUSE') {
    const mend = `Stop the program that uses it (it may be Loamtide itself), or take another, such as --port ${port + 1}.`;
    return refusal(about, '--port', `Port ${port} is in use.`, mend);
  }
  if (code === 'EACCES') {
    return refusal(
      about,
      '--port',
      `Port ${port} is kept for the system.`,
      'Take one from 1024 up, such as --port 8137.',
    );
  }
  if (code === 'EADDRNOTAVAIL') {
    return refusal(about, '--host', 'This computer has no such address.', 'Leave it out, or give 127.0.0.1.');
  }
  return undefined;
}
