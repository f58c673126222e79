/**
 * Who asks: from where, over what, and through whom. What a proxy says of it is believed only of proxies that are named in
 * the settings; from anybody else it changes nothing.
 */
import { type BlockList, isIP } from 'node:net';
import type { MiddlewareHandler } from 'hono';
import type { WebSettings } from '../addresses/settings.ts';
import { isAtHome, isIn, isLoopback, listOf, plainAddress } from '../requests/network.ts';
import { type ClientContext, headerOf } from '../requests/request.ts';

/** Who made a request. */
export interface Caller {
  /** Its address: of the reader where a trusted proxy tells it, else of whoever opened the connection. */
  address: string;
  /** Whether it came to this program from this computer itself and through no proxy. */
  isHere: boolean;
  /** Whether it is known to come from a network at home. */
  isAtHome: boolean;
  /** Whether the reader speaks https, to whoever speaks http to this program. */
  isSecure: boolean;
  /** Whether it came through a trusted proxy. */
  isBelieved: boolean;
}

declare module 'hono' {
  interface ContextVariableMap {
    caller: Caller;
  }
}

/** Headers a proxy leaves on what it passes on: RFC 7239 and RFC 9110 name the first two, custom the others. */
const PROXY_HEADERS = [
  'forwarded',
  'via',
  'x-forwarded-for',
  'x-forwarded-host',
  'x-forwarded-proto',
  'x-forwarded-port',
  'x-forwarded-server',
  'x-real-ip',
  'cf-connecting-ip',
  'true-client-ip',
];

/** Most stations of a way through proxies that are looked at. House default. */
const STATIONS = 10;

/** Finds out who asks, for everything that comes after. */
export function knowCaller(settings: WebSettings): MiddlewareHandler {
  const trusted = listOf(settings.trustedProxies ?? []);
  return async (c, next) => {
    c.set('caller', callerOf(c, { settings, trusted }));
    await next();
  };
}

/** Tells whether a request came through a trusted proxy, where no more need be known of who asks. */
export function throughTrusted({ trustedProxies = [] }: WebSettings): (c: ClientContext) => boolean {
  const trusted = listOf(trustedProxies);
  return (c) => isIn(trusted, addressNext(c));
}

/** The address of whoever opened the connection. A request without a socket was made inside this program. */
function addressNext(c: ClientContext): string {
  return plainAddress(c.env?.incoming?.socket.remoteAddress ?? '127.0.0.1');
}

function callerOf(c: ClientContext, { settings, trusted }: { settings: WebSettings; trusted: BlockList }): Caller {
  const next = addressNext(c);
  const isBelieved = isIn(trusted, next);
  const isPassedOn = PROXY_HEADERS.some((name) => c.req.header(name) !== undefined);
  const reader = isBelieved ? readerBehind(headerOf(c, 'x-forwarded-for') ?? '', trusted) : undefined;
  const address = reader ?? next;
  const host = (headerOf(c, 'host') ?? '').toLowerCase();
  const { publicUrl } = settings;
  return {
    address,
    isHere: isLoopback(next) && !isPassedOn,
    isAtHome: isAtHome(address) && (reader !== undefined || !isPassedOn),
    isBelieved,
    isSecure:
      (publicUrl?.protocol === 'https:' && host === publicUrl.host) ||
      (isBelieved && lastOf(headerOf(c, 'x-forwarded-proto') ?? '').toLowerCase() === 'https'),
  };
}

/**
 * The nearest address that no trusted proxy has: what stands before it in the header, anybody may have written. Nothing where
 * a proxy tells none that can be read, so that a stranger is not taken for the proxy, which may stand at home.
 */
function readerBehind(forwardedFor: string, trusted: BlockList): string | undefined {
  let address: string | undefined;
  for (const station of forwardedFor.split(',').slice(-STATIONS).reverse()) {
    const before = plainAddress(station.trim());
    if (isIP(before) === 0) return undefined;
    address = before;
    if (!isIn(trusted, address)) break;
  }
  return address;
}

function lastOf(list: string): string {
  return (list.split(',').at(-1) ?? '').trim();
}
