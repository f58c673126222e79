/**
 * The cookie by which a device that is signed in is known: signed, out of reach of scripts, and over https only ever sent
 * over https.
 */
import type { Context } from 'hono';
import { deleteCookie, getSignedCookie, setSignedCookie } from 'hono/cookie';
import type { CookieOptions } from 'hono/utils/cookie';
import type { Lock } from '../../steward/doings/sign-in-doings.ts';
import { SESSION_DAYS } from '../../steward/sign-in/sign-in.ts';

const NAME = 'loamtide';

/**
 * Over https its name has the prefix "__Host-" (RFC 6265bis, 4.1.3.2): no other site, and nobody who listens in on plain
 * http, can then put one of their own in its place.
 *
 * "Lax", not "Strict": whoever follows a link from their calendar or from mail comes from another site, and under "Strict"
 * would be asked for the password each time. Under "Lax" the cookie comes with such a link only, never with a form of
 * another site, and no link changes anything here.
 */
function optionsFor(c: Context): CookieOptions {
  const common = { path: '/', httpOnly: true, sameSite: 'Lax' } as const;
  return c.get('caller').isSecure ? { ...common, secure: true, prefix: 'host' } : common;
}

/** The token of the cookie that came with a request; nothing where there is none that was signed here. */
export async function sessionToken(c: Context, { cookieKey }: Lock): Promise<string | undefined> {
  const token = await (c.get('caller').isSecure
    ? getSignedCookie(c, cookieKey, NAME, 'host')
    : getSignedCookie(c, cookieKey, NAME));
  return token === false ? undefined : token;
}

/** Gives a device the cookie. */
export async function giveSessionCookie(c: Context, { cookieKey }: Lock, token: string): Promise<void> {
  await setSignedCookie(c, NAME, token, cookieKey, { ...optionsFor(c), maxAge: SESSION_DAYS * 24 * 3600 });
}

/** Takes the cookie from a device, and has it forget the pages it kept. */
export function takeSessionCookie(c: Context): void {
  deleteCookie(c, NAME, optionsFor(c));
  c.header('Clear-Site-Data', '"cache"');
}
