/**
 * What every request passes before anything answers it.
 */
import { isIP } from 'node:net';
import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Problem } from '../../garden/problem.ts';
import { ownHosts, type WebSettings } from '../addresses/settings.ts';
import { Trouble } from './trouble.ts';

/** Most octets a form may send. House default: the longest form here has one line for each bed. */
export const FORM_LIMIT_BYTES = 64 * 1024;

/** Most octets a form with a weather file may send. House default: a century of GHCN-Daily by station is some 15 MB. */
const UPLOAD_LIMIT_BYTES = 20 * 1024 * 1024;

/**
 * For two years, as the OWASP HTTP Headers Cheat Sheet has it. Not for names below ours: what else is served there is not
 * known here.
 */
const ONLY_HTTPS = 'max-age=63072000';

/** What every answer carries: the OWASP HTTP Headers Cheat Sheet, as far as it is about an answer without script. */
export const SAFETY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy':
    "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; frame-ancestors 'none'; base-uri 'none'",
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  // Not "no-referrer": under it browsers send "Origin: null" with the page's own forms, and those that do not send
  // Sec-Fetch-Site could then change nothing. Other sites learn as little under this one.
  'Referrer-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'X-Permitted-Cross-Domain-Policies': 'none',
  // Pages have no script that could ask for any of it; a browser need not believe that.
  'Permissions-Policy': 'camera=(), display-capture=(), geolocation=(), microphone=(), midi=(), payment=(), usb=()',
  'X-Robots-Tag': 'noindex, nofollow',
};

/**
 * Puts the safety headers on every answer that has none of its own, refusals included. Pages are not kept by anyone else; and
 * over plain http not by the browser of a device that is signed in, where it passes over Clear-Site-Data and would show them
 * to whoever goes back after the sign-out (OWASP ASVS 5.0, 14.3). Over https it keeps them, with what was typed into them.
 */
export const safetyHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(SAFETY_HEADERS)) {
    if (!c.res.headers.has(name)) c.header(name, value);
  }
  const { isSecure } = c.get('caller');
  if (isSecure) c.header('Strict-Transport-Security', ONLY_HTTPS);
  if (c.res.headers.has('Cache-Control')) return;
  c.header('Cache-Control', isSecure || c.get('signedIn') === undefined ? 'private, no-cache' : 'no-store');
};

/**
 * Answers only under names this program goes by, so that another site cannot give its own name our address. An address in
 * numbers is nobody's name to give: where others on the network may come in, every such one is answered.
 */
export function hostGuard(settings: WebSettings): MiddlewareHandler {
  const isOwn = ownNames(settings);
  return async (c, next) => {
    const host = hostOf(c);
    if (!isOwn(host)) throw strangeHost(host, settings);
    await next();
  };
}

/** Tells whether a Host header, in small letters, is one this program answers to. */
export function ownNames(settings: WebSettings): (host: string) => boolean {
  const own = ownHosts(settings);
  return (host) =>
    own.has(host) || host === settings.publicUrl?.host || (settings.isOpenToNetwork === true && isInNumbers(host));
}

/** Whether a Host header names an address and no name: "192.168.1.20:8137", "[fd00::20]:8137". */
function isInNumbers(host: string): boolean {
  const [, six, four] = /^(?:\[([^\]]+)\]|([^:[\]]+))(?::\d{1,5})?$/.exec(host) ?? [];
  return isIP(six ?? four ?? '') === (six === undefined ? 4 : 6);
}

/**
 * Lets only the program's own pages change anything. A browser that sends Sec-Fetch-Site has settled the question;
 * an older one sends Origin with every form. A request with neither is refused too: every browser since 2020 sends
 * one, a page cannot hold it back, and programs have the command line.
 */
export const originGuard: MiddlewareHandler = async (c, next) => {
  if (c.req.method !== 'GET' && c.req.method !== 'HEAD' && !comesFromOwnPage(c)) throw crossSite();
  await next();
};

function comesFromOwnPage(c: Context): boolean {
  const site = c.req.header('sec-fetch-site');
  // "none" is the gardener's own doing, such as a form sent again after the browser was restarted.
  if (site !== undefined) return site === 'same-origin' || site === 'none';
  const origin = c.req.header('origin') ?? '';
  if (!URL.canParse(origin)) return false;
  // An origin is its scheme as well (RFC 6454, 4): over plain http anybody on the way can give a page our name.
  const { protocol, host } = new URL(origin);
  return host === hostOf(c) && protocol === (c.get('caller').isSecure ? 'https:' : 'http:');
}

function hostOf(c: Context): string {
  return (c.req.header('host') ?? '').toLowerCase();
}

/** Most octets a form about a fact may send: it carries the row it was filled from, with all its log. House default. */
const EDIT_LIMIT_BYTES = 1024 * 1024;
const EDIT_PATHS = /^\/gardens\/[^/]+\/edit\//;

/** Forms that bring a file with weather, and such as bring a garden file. */
const UPLOAD_PATHS = /^\/gardens\/[^/]+\/weather\/(?:record|days)$/;
const GARDEN_FILE_PATHS = /^\/(?:gardens\/[^/]+\/garden-file|bring-in)(?:\/|$)/;

/** Refuses a body too long to be the form that is sent to its address. */
export const formLimit: MiddlewareHandler = (c, next) => {
  const { path } = c.req;
  if (EDIT_PATHS.test(path)) return editLimit(c, next);
  if (UPLOAD_PATHS.test(path)) return uploadLimit(c, next);
  return GARDEN_FILE_PATHS.test(path) ? gardenFileLimit(c, next) : shortLimit(c, next);
};

const tooLongForm = (maxSize: number): MiddlewareHandler =>
  limitedTo(maxSize, 'That form is too long', {
    where: 'the form',
    what: `It is longer than ${maxSize / 1024} KiB.`,
    mend: 'Send it again with less in it.',
  });
const shortLimit = tooLongForm(FORM_LIMIT_BYTES);
const editLimit = tooLongForm(EDIT_LIMIT_BYTES);

const uploadLimit = limitedTo(UPLOAD_LIMIT_BYTES, 'That file is too large', {
  where: 'the file',
  what: `It is larger than ${UPLOAD_LIMIT_BYTES / 1024 / 1024} MiB.`,
  mend: 'Pack it with gzip, or send the years you want.',
});

/** Most octets a garden file may have, packed and unpacked: hundreds of times a large garden's. House default. */
export const GARDEN_FILE_LIMIT_BYTES = 1024 * 1024;

const gardenFileLimit = limitedTo(GARDEN_FILE_LIMIT_BYTES, 'That file is too long', {
  where: 'the garden file',
  what: `It is longer than ${GARDEN_FILE_LIMIT_BYTES / 1024 / 1024} MiB.`,
  mend: 'Send the garden file alone: a weather record is brought in on the Weather log.',
});

/** Refuses longer bodies with a page that says so. */
function limitedTo(maxSize: number, title: string, problem: Problem): MiddlewareHandler {
  return bodyLimit({
    maxSize,
    onError: () => {
      throw new Trouble(413, title, [problem]);
    },
  });
}

/** The same for a reading told by a script, which is answered in JSON. */
export const readingLimit: MiddlewareHandler = bodyLimit({
  maxSize: FORM_LIMIT_BYTES,
  onError: (c) => {
    const what = `It is longer than ${FORM_LIMIT_BYTES / 1024} KiB.`;
    return c.json({ problems: [{ where: 'the body', what, mend: 'Send one reading at a time.' }] }, 413);
  },
});

function strangeHost(host: string, { port }: WebSettings): Trouble {
  return new Trouble(host === '' ? 400 : 421, 'This name is not known here', [
    {
      where: 'the Host header',
      what: host === '' ? 'It is missing.' : `"${host.slice(0, 100)}" is not a name this garden answers to.`,
      mend: `On this computer use http://127.0.0.1:${port}. A name phones can reach is set with LOAMTIDE_PUBLIC_URL.`,
    },
  ]);
}

function crossSite(): Trouble {
  return new Trouble(403, 'Nothing was changed', [
    {
      where: 'the form',
      what: 'It did not come from one of these pages.',
      mend: 'Open the page here and send its own form.',
    },
  ]);
}
