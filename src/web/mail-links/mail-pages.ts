/**
 * What the pages behind links in mail share: who holds a link may use it, and it is kept from everybody else.
 */
import type { Context, MiddlewareHandler } from 'hono';
import { fullDay } from '../../digest/words.ts';
import type { Followed, MailLink, OwnLink } from '../../steward/doings/mail-links.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { clientOf } from '../requests/request.ts';
import { Trouble } from '../requests/trouble.ts';
import type { WrongTokens } from '../requests/wrong-tokens.ts';

/** Addresses of pages behind links in mail. */
export const MAIL_PATHS = /^\/(?:answer|stop)\//;

/**
 * Headers of these pages. Nobody keeps them, and no request that follows tells their address, not even the one for our own
 * stylesheet, which a proxy may log with where it came from. "no-referrer" would do that as well, but under it browsers
 * send "Origin: null" with the page's own form, and over plain http, where they send no Sec-Fetch-Site either, nothing
 * could be answered. Under this one the form says where it comes from, and nothing says more than the name of the site.
 */
export const mailHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  if (!MAIL_PATHS.test(c.req.path)) return;
  c.header('Referrer-Policy', 'strict-origin');
  c.header('Cache-Control', 'no-store');
};

/**
 * The link that leads on.
 *
 * @throws {Trouble} 404 for every kind of link that was never sent, 429 after many of them; 410 when it worked once, 403
 *   when whoever it went to is no longer of the household
 */
export async function linkThatLeadsOn<Link extends MailLink>(
  c: Context,
  followed: Followed<Link>,
  { steward, wrong }: { steward: Steward; wrong: WrongTokens },
): Promise<OwnLink<Link>> {
  switch (followed.leads) {
    case 'on':
      return followed.link;
    case 'too late':
      throw tooLate(fullDay(followed.lastDay, (await steward.view(followed.link.gardenId)).garden.place.units));
    case 'to a stranger':
      throw toAStranger();
    case 'nowhere':
      throw nowhere(c, wrong.count(clientOf(c)));
    default:
      return followed satisfies never;
  }
}

function nowhere(c: Context, waitSeconds: number | undefined): Trouble {
  if (waitSeconds === undefined) {
    const what = 'Nothing was ever sent with it, or it was cut short on its way.';
    const mend = 'Open it from the mail itself, whole.';
    return new Trouble(404, 'This link leads nowhere', [{ where: 'the link', what, mend }]);
  }
  c.header('Retry-After', String(waitSeconds));
  return new Trouble(429, 'Too many wrong links', [
    { where: 'the link', what: 'Too many that lead nowhere were tried.', mend: `Wait ${waitSeconds} seconds.` },
  ]);
}

function tooLate(lastDay: string): Trouble {
  return new Trouble(410, 'This link has run out', [
    {
      where: 'the link',
      what: `It worked until ${lastDay}. Nothing was changed.`,
      mend: 'Use the newest list, or the pages at home.',
    },
  ]);
}

function toAStranger(): Trouble {
  return new Trouble(403, 'This link is nobody’s now', [
    {
      where: 'the link',
      what: 'It was sent to somebody who is no longer of the household. Nothing was changed.',
      mend: 'Use the pages at home; the Household page says who gets the list.',
    },
  ]);
}
