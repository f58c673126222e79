/**
 * Signing in and out.
 */
import { type Context, Hono } from 'hono';
import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Lock } from '../../steward/doings/sign-in-doings.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { dayIn } from '../../steward/planning/planner.ts';
import { SIGN_IN_PATH, SIGN_OUT_EVERYWHERE_PATH, SIGN_OUT_PATH, WHO_GETS_IN_PATH } from '../addresses/addresses.ts';
import { ownPath } from '../addresses/own-path.ts';
import { readForm } from '../requests/form.ts';
import { refusedAtTheDoor } from './doorkeeper.ts';
import { giveSessionCookie, sessionToken, takeSessionCookie } from './session-cookie.ts';
import { signInPage } from './sign-in.tsx';
import { SignInTries } from './sign-in-tries.ts';
import { whoGetsInPage } from './who-gets-in.tsx';

/** Seconds after which the row of those who sign in at once is shorter. House default: some twenty hashes of a slow computer. */
const BUSY_SECONDS = 10;

/** The sign-in, the way out, and the page that says who gets in. */
export function signInRoutes(steward: Steward, tries = new SignInTries()): Hono {
  return new Hono()
    .get(SIGN_IN_PATH, (c) => {
      const to = ownPath(c.req.query('to') ?? '');
      const isIn = c.get('lock') === undefined || c.get('signedIn') !== undefined;
      return isIn ? c.redirect(to, 303) : signInAsked(c, to);
    })
    .post(SIGN_IN_PATH, async (c) => {
      const lock = c.get('lock');
      return lock === undefined ? c.redirect('/', 303) : signIn(c, { steward, tries, lock });
    })
    .get(WHO_GETS_IN_PATH, async (c) => {
      if (c.get('lock') === undefined) return c.html(whoGetsInPage({}));
      const devices = await steward.sessions();
      const since = await dayHere(steward, devices[0]?.beganAt ?? '');
      return c.html(whoGetsInPage({ devices: { count: devices.length, since } }));
    })
    .post(SIGN_OUT_PATH, async (c) => {
      const signedIn = c.get('signedIn');
      if (signedIn !== undefined) await steward.signOut(signedIn.token);
      return signedOut(c);
    })
    .post(SIGN_OUT_EVERYWHERE_PATH, async (c) => {
      await steward.signOutEverywhere();
      return signedOut(c);
    });
}

async function signIn(c: Context, room: { steward: Steward; tries: SignInTries; lock: Lock }): Promise<Response> {
  const { steward, tries, lock } = room;
  const form = await readForm(c);
  const to = ownPath(form.text('to'));
  const tried = tries.begin(c.get('caller'));
  if (typeof tried === 'number') {
    const what = 'Too many wrong passwords were tried.';
    return heldUp(c, { to, status: 429, seconds: tried, what });
  }
  const result = await steward.signIn(form.text('password'), await sessionToken(c, lock));
  switch (result.outcome) {
    case 'in':
      tried.right();
      await giveSessionCookie(c, lock, result.token);
      return c.redirect(to, 303);
    case 'wrong':
      return refusedAtTheDoor(c, pageFor(c, to, [WRONG]));
    case 'busy':
      tried.notMade();
      return heldUp(c, { to, status: 503, seconds: BUSY_SECONDS, what: 'Too many are signing in at once.' });
    default:
      return result satisfies never;
  }
}

const WRONG: Problem = {
  where: 'the form',
  what: 'That is not the household’s password.',
  mend: 'Type it again; capitals count.',
};

interface HeldUp {
  to: string;
  status: 429 | 503;
  seconds: number;
  what: string;
}

function heldUp(c: Context, { to, status, seconds, what }: HeldUp): Response | Promise<Response> {
  c.header('Retry-After', String(seconds));
  const wait = seconds > 120 ? `${Math.ceil(seconds / 60)} minutes` : seconds === 1 ? 'a second' : `${seconds} seconds`;
  const problem = { where: 'the form', what, mend: `Wait ${wait}, then try again.` };
  return signInAsked(c, to, { status, problems: [problem] });
}

function signInAsked(
  c: Context,
  to: string,
  { status = 200, problems = [] }: { status?: 200 | 429 | 503; problems?: readonly Problem[] } = {},
): Response | Promise<Response> {
  c.header('Cache-Control', 'no-store');
  return c.html(pageFor(c, to, problems), status);
}

function pageFor(c: Context, back: string, problems: readonly Problem[]) {
  const { isSecure, isHere } = c.get('caller');
  return signInPage({ back, problems, isOpenlySent: !isSecure && !isHere });
}

function signedOut(c: Context): Response {
  takeSessionCookie(c);
  return c.redirect(SIGN_IN_PATH, 303);
}

/** A day as it is written for the first garden, or in UTC where there is none. */
async function dayHere(steward: Steward, at: string): Promise<string> {
  const [first] = await steward.gardenIds();
  if (first === undefined) return fullDay(at.slice(0, 10), 'metric');
  const { place } = (await steward.view(first)).garden;
  return fullDay(dayIn(place.timeZone, at), place.units);
}
