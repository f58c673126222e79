/**
 * What the pages need to know about where they are reached.
 */

/** Where the program listens and under which names it answers. */
export interface WebSettings {
  port: number;
  /** The address phones and calendar services reach, when there is one. */
  publicUrl?: URL;
  /** Names of this computer besides the loopback ones, such as "hollow.local". */
  hostNames: readonly string[];
  /** Whether other computers of the network can reach the port, so that it answers under its addresses too. */
  isOpenToNetwork?: boolean;
  /** Proxies that are believed when they say for whom they ask: addresses, or networks such as 172.16.0.0/12. */
  trustedProxies?: readonly string[];
}

/** Names under which only this computer reaches itself. */
const LOOPBACK_NAMES = ['localhost', '127.0.0.1', '[::1]'];

/** The port a browser leaves out of the Host header when it speaks plain HTTP. */
const PLAIN_HTTP_PORT = 80;

/** Host headers under which the whole garden is shown. */
export function ownHosts({ port, hostNames }: WebSettings): Set<string> {
  const names = [...LOOPBACK_NAMES, ...hostNames.map((name) => name.toLowerCase())];
  return new Set(names.flatMap((name) => (port === PLAIN_HTTP_PORT ? [name, `${name}:${port}`] : [`${name}:${port}`])));
}

/** Longest address a feed may have: a widespread calendar service takes no longer one, its scheme included. */
export const ADDRESS_CHARACTERS = 256;

/** The address of a feed: the public one where there is one, else one that works on this computer only. */
export function feedAddress({ port, publicUrl }: WebSettings, token: string): string {
  return new URL(`/feed/${token}.ics`, publicUrl ?? `http://127.0.0.1:${port}`).href;
}

/** The same address in the form that hands itself to a calendar app; there is none that only this computer reaches. */
export function webcalAddress(settings: WebSettings, token: string): string | undefined {
  if (settings.publicUrl === undefined) return undefined;
  return feedAddress(settings, token).replace(/^https?:/, 'webcal:');
}
