/**
 * The sample garden behind a password, and a device that signs in to it.
 */

import type { WebSettings } from '../../../src/web/addresses/settings.ts';
import { FORM_TOKEN } from '../../../src/web/sign-in/form-token.ts';
import { HOST, sampleApp, sampleFile } from '../sample-garden.ts';

export const PASSWORD = 'beet row under the old pear';

/** Headers of a form of an own page. */
export const OWN = { 'Sec-Fetch-Site': 'same-origin' };

/** The app behind {@link PASSWORD}; nobody is signed in. */
export async function lockedApp(settings: WebSettings = { port: 8137, hostNames: [] }) {
  const opened = await sampleApp(sampleFile(), settings);
  await opened.steward.setPassword(PASSWORD);
  const signIn = async (
    fields: Record<string, string> = { password: PASSWORD },
    headers: Record<string, string> = {},
  ) => opened.send('/sign-in', fields, { ...OWN, ...headers });
  return { ...opened, signIn };
}

/** The cookie an answer gives, as it is sent back. */
export function cookieOf(answer: Response): string {
  return answer.headers.getSetCookie().at(-1)?.split(';')[0] ?? '';
}

/** The token in the forms of a page. */
export function tokenIn(html: string): string {
  return new RegExp(`name="${FORM_TOKEN}" value="([^"]+)"`).exec(html)?.[1] ?? '';
}

/** The same with a device signed in: its cookie, and the token of its forms. */
export async function signedInApp(settings?: WebSettings, host = HOST) {
  const locked = await lockedApp(settings);
  const answer = await locked.signIn({ password: PASSWORD }, { Host: host });
  const Cookie = cookieOf(answer);
  const page = await (await locked.get('/who-gets-in', { Host: host, Cookie })).text();
  return { ...locked, answer, Cookie, formToken: tokenIn(page) };
}
