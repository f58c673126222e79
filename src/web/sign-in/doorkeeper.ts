/**
 * Who gets in. Without a password, whoever sits at this computer; with one, whoever has signed in.
 */
import type { Context, MiddlewareHandler } from 'hono';
import type { Lock, SignInDoings } from '../../steward/doings/sign-in-doings.ts';
import { SIGN_IN_PATH, signInPath } from '../addresses/addresses.ts';
import { ownPath } from '../addresses/own-path.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { Trouble } from '../requests/trouble.ts';
import { formToken } from './form-token.ts';
import { sessionToken } from './session-cookie.ts';
import { signInPage } from './sign-in.tsx';

/** A device that is signed in, as a request of it is answered. */
export interface SignedIn {
  /** What its cookie holds. */
  token: string;
  formToken: string;
}

declare module 'hono' {
  interface ContextVariableMap {
    /** What guards the pages, where something does. */
    lock: Lock | undefined;
    signedIn: SignedIn | undefined;
  }
}

/** What is answered without a password: addresses that hold a secret of their own, and what those need. */
export const PUBLIC_PATHS =
  /^\/(?:feed\/[^/]+|api\/piles\/[^/]+\/readings|(?:answer|stop)\/[^/]+|style\.css|robots\.txt|health)$/;

/** Lets in whoever may come in, and shows everybody else the way. */
export function doorkeeper(doings: SignInDoings, { publicUrl }: WebSettings): MiddlewareHandler {
  return async (c, next) => {
    if (PUBLIC_PATHS.test(c.req.path)) return next();
    const lock = await doings.lock();
    if (lock === undefined) {
      const isPublicName = (c.req.header('host') ?? '').toLowerCase() === publicUrl?.host;
      if (isPublicName || !c.get('caller').isHere) throw keptHome();
      return next();
    }
    c.set('lock', lock);
    c.set('signedIn', await signedInBy(c, lock, doings));
    if (c.get('signedIn') === undefined && c.req.path !== SIGN_IN_PATH) return asked(c);
    return next();
  };
}

async function signedInBy(c: Context, lock: Lock, doings: SignInDoings): Promise<SignedIn | undefined> {
  const token = await sessionToken(c, lock);
  if (token === undefined || (await doings.session(token)) === undefined) return undefined;
  return { token, formToken: formToken(lock.cookieKey, token) };
}

/** Looking leads to the sign-in and back; a change is refused there, since what was sent is not kept. */
function asked(c: Context): Response | Promise<Response> {
  const { pathname, search } = new URL(c.req.url);
  if (c.req.method === 'GET' || c.req.method === 'HEAD') return c.redirect(signInPath(pathname + search), 303);
  const back = ownPath(c.req.header('referer') ?? '', `http://${c.req.header('host')}`);
  const what = 'This device is not signed in, or its time was over.';
  const mend = 'Sign in, and send it again.';
  return refusedAtTheDoor(c, signInPage({ back, problems: [{ where: 'the form', what, mend }] }));
}

/**
 * 401 with the sign-in page. RFC 9110, 11.6.1 wants a scheme named; none is registered for a form and a cookie, and browsers
 * pass over one they do not know.
 */
export function refusedAtTheDoor(
  c: Context,
  page: string | ReturnType<typeof signInPage>,
): Response | Promise<Response> {
  c.header('WWW-Authenticate', `Cookie realm="household", form-action="${SIGN_IN_PATH}"`);
  c.header('Cache-Control', 'no-store');
  return c.html(page, 401);
}

function keptHome(): Trouble {
  return new Trouble(403, 'The pages stay at home', [
    {
      where: 'address',
      what: 'Only calendar feeds and links from mail are answered from outside this computer: the pages can change the garden, and no password guards them.',
      mend: 'Open the pages on the computer Loamtide runs on, or set a password there with "loamtide password".',
    },
  ]);
}
