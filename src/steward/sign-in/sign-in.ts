/**
 * The household's password and who is signed in with it.
 */
import { createHash, randomBytes } from 'node:crypto';
import { InputRefused } from '../../garden/problem.ts';
import type { Instant } from '../../measures/days.ts';
import type { KeptSession, SessionEnds } from '../../store/sessions.ts';
import type { Store } from '../../store/store.ts';
import type { Session, SignInDoings, SignInTry } from '../doings/sign-in-doings.ts';
import type { Clock } from '../planning/planner.ts';
import { OneAtATime } from './one-at-a-time.ts';
import { isOutdated, isPassword, passwordHash, type ScryptCost } from './password-hash.ts';
import { inOneForm, passwordProblems } from './password-rules.ts';

/** 256 bits: four times what OWASP ASVS 5.0, 7.2.3 asks of a session's token. */
const TOKEN_OCTETS = 32;

/** As long as what SHA-256 gives, which RFC 2104, 3 asks a key to be at least. */
const KEY_OCTETS = 32;

const DAY_MS = 24 * 3_600_000;

/** Days after which everybody signs in anew, however much they come: NIST SP 800-63B-4, 2.1.3 for its lowest level. */
export const SESSION_DAYS = 30;

/** Days without a visit after which a device is signed out. House default: two weekly lists were not looked at. */
const UNUSED_DAYS = 14;

/** How far the time a device was last seen may be behind: every note of it is a write to the disk. House default. */
const NOTED_EVERY_MS = 3_600_000;

/** Devices signed in at once; the first is signed out for the next. House default: far more than a household has. */
const SESSIONS_MOST = 100;

/** What the sign-in works with. */
interface SignInRoom {
  store: Store;
  clock: Clock;
  /** What a password's hash costs to make. */
  cost: ScryptCost;
  /** Told of what went wrong behind an answer that was given all the same. */
  report: (fault: unknown) => void;
}

/** What a steward does with the password. */
export function signInIn({ store, clock, cost, report }: SignInRoom): SignInDoings {
  const row = new OneAtATime();
  return {
    async lock() {
      const kept = await store.password();
      return kept && { cookieKey: kept.cookieKey, setAt: kept.setAt };
    },
    setPassword: (typed) => setPassword({ store, clock, cost }, typed),
    removePassword: () =>
      store.transaction(async (shelves) => {
        await shelves.endSessions();
        return shelves.dropPassword();
      }),
    signIn: async (typed, before) =>
      (await row.do(() => signedIn({ store, clock, cost }, inOneForm(typed), before))) ?? { outcome: 'busy' },
    async session(token) {
      const [kept, now] = [await store.session(hashOf(token)), clock.now()];
      if (kept === undefined || isOver(kept, now)) return undefined;
      if (Date.parse(now) - Date.parse(kept.usedAt) > NOTED_EVERY_MS) {
        // A disk that is full must not keep anybody from reading.
        await store.noteSessionUsed(kept.tokenHash, now).catch(report);
      }
      return sessionOf(kept);
    },
    async sessions() {
      const now = clock.now();
      return (await store.sessions()).filter((kept) => !isOver(kept, now)).map(sessionOf);
    },
    signOut: (token) => store.endSession(hashOf(token)),
    signOutEverywhere: () => store.endSessions(),
  };
}

type Room = Pick<SignInRoom, 'store' | 'clock' | 'cost'>;

async function setPassword({ store, clock, cost }: Room, typed: string): Promise<number> {
  const password = inOneForm(typed);
  const problems = passwordProblems(password);
  if (problems.length > 0) throw new InputRefused('The password was not set.', problems);
  const kept = {
    hash: await passwordHash(password, cost),
    cookieKey: randomBytes(KEY_OCTETS).toString('base64url'),
    setAt: clock.now(),
  };
  return store.transaction(async (shelves) => {
    await shelves.keepPassword(kept);
    return shelves.endSessions();
  });
}

async function signedIn({ store, clock, cost }: Room, password: string, before?: string): Promise<SignInTry> {
  const lock = await store.password();
  if (lock === undefined || !(await isPassword(password, lock.hash))) return { outcome: 'wrong' };
  const dearer = isOutdated(lock.hash, cost) ? await passwordHash(password, cost) : undefined;
  const token = randomBytes(TOKEN_OCTETS).toString('base64url');
  return store.transaction(async (shelves) => {
    // Another password may have been set while this one was looked at.
    if ((await shelves.password())?.hash !== lock.hash) return { outcome: 'wrong' };
    if (dearer !== undefined) await shelves.keepPassword({ ...lock, hash: dearer });
    const now = clock.now();
    await shelves.clearSessions(endsAt(now));
    if (before !== undefined) await shelves.endSession(hashOf(before));
    const others = await shelves.sessions();
    for (const { tokenHash } of others.slice(0, Math.max(0, others.length + 1 - SESSIONS_MOST))) {
      await shelves.endSession(tokenHash);
    }
    await shelves.addSession({ tokenHash: hashOf(token), beganAt: now, usedAt: now });
    return { outcome: 'in', token };
  });
}

/** The moments before which a session that began, or was last used, is over. */
function endsAt(now: Instant): SessionEnds {
  const daysBefore = (days: number): Instant => new Date(Date.parse(now) - days * DAY_MS).toISOString();
  return { beganBefore: daysBefore(SESSION_DAYS), usedBefore: daysBefore(UNUSED_DAYS) };
}

/** Also where it began a day or more from now: the clock was wrong then, and would let it last. */
function isOver({ beganAt, usedAt }: KeptSession, now: Instant): boolean {
  const { beganBefore, usedBefore } = endsAt(now);
  const isFromAhead = Date.parse(beganAt) >= Date.parse(now) + DAY_MS;
  return isFromAhead || beganAt <= beganBefore || usedAt <= usedBefore;
}

function sessionOf({ beganAt, usedAt }: KeptSession): Session {
  return { beganAt, usedAt };
}

/** The token is long and made by chance, so that one plain hash keeps it as well as a slow one. */
function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
