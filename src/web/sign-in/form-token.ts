/**
 * The proof that a form was drawn here for the device that sends it: a token in every form that changes something, bound to
 * the session (OWASP Cross-Site Request Forgery Prevention Cheat Sheet, signed token bound to the session).
 *
 * Forms do not know of it. It is put into each as its page leaves the program, and taken out of what was sent before
 * anything reads that.
 */
import { createHmac, timingSafeEqual } from 'node:crypto';
import type { Context, MiddlewareHandler } from 'hono';
import { SIGN_IN_PATH } from '../addresses/addresses.ts';
import { formDataOf } from '../requests/form.ts';
import { Trouble } from '../requests/trouble.ts';

/** The field that holds it. */
export const FORM_TOKEN = 'form-token';

/** Every form that is sent by POST, up to where its fields begin. Within an attribute ">" is written as an entity. */
const POSTED_FORM = /<form\b[^>]*\smethod="post"[^>]*>/g;

/** The field as it stands in a page already. */
const HELD_FIELD = new RegExp(`<input type="hidden" name="${FORM_TOKEN}" value="[^"]*"/>`, 'g');

/** The token of a session's forms. */
export function formToken(cookieKey: string, sessionToken: string): string {
  return createHmac('sha256', cookieKey).update(`loamtide form\n${sessionToken}`).digest('base64url');
}

/** Puts the token into every form of a page. */
export const tokensInForms: MiddlewareHandler = async (c, next) => {
  await next();
  const token = c.get('signedIn')?.formToken;
  if (token === undefined || !(c.res.headers.get('Content-Type') ?? '').startsWith('text/html')) return;
  const html = await c.res.text();
  const field = `<input type="hidden" name="${FORM_TOKEN}" value="${token}"/>`;
  // A page that took long has passed here once already, and its reader may be another device by now.
  const bare = html.replace(HELD_FIELD, '');
  c.res = new Response(
    bare.replace(POSTED_FORM, (form) => form + field),
    c.res,
  );
};

/**
 * Takes changes only with the token of the session they are sent in. Comes after whatever bounds how long a form may be. The
 * sign-in needs none: its form was drawn for whoever has no session yet, and brings the password.
 */
export const formTokenGuard: MiddlewareHandler = async (c, next) => {
  const token = c.get('signedIn')?.formToken;
  const isChange = c.req.method !== 'GET' && c.req.method !== 'HEAD' && c.req.path !== SIGN_IN_PATH;
  if (token !== undefined && isChange) {
    const sent = await sentWith(c);
    if (!isSame(String(sent?.get(FORM_TOKEN) ?? ''), token)) throw staleForm();
    // What reads the form after this is given this very object.
    sent?.delete(FORM_TOKEN);
  }
  await next();
};

async function sentWith(c: Context): Promise<FormData | undefined> {
  try {
    return await formDataOf(c);
  } catch (error) {
    if (error instanceof Trouble && error.status === 400) return undefined;
    throw error;
  }
}

function isSame(sent: string, token: string): boolean {
  const [one, other] = [Buffer.from(sent), Buffer.from(token)];
  return one.length === other.length && timingSafeEqual(one, other);
}

function staleForm(): Trouble {
  return new Trouble(403, 'Nothing was changed', [
    {
      where: 'the form',
      what: 'It was not drawn for this device since it signed in.',
      mend: 'Open its page anew and send it again; what was typed is still there when you go back.',
    },
  ]);
}
