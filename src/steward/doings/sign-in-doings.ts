import type { Instant } from '../../measures/days.ts';

/** What guards the pages. */
export interface Lock {
  /** Signs cookies and forms. It changes with every password. */
  cookieKey: string;
  setAt: Instant;
}

/** A device that is signed in. */
export interface Session {
  beganAt: Instant;
  usedAt: Instant;
}

/** How a try to sign in ended. */
export type SignInTry =
  | { outcome: 'in'; token: string }
  | { outcome: 'wrong' }
  /** Too many try at the same moment. */
  | { outcome: 'busy' };

/** What a steward does with the household's password. */
export interface SignInDoings {
  /** What guards the pages; nothing where the household has no password. */
  lock(): Promise<Lock | undefined>;
  /**
   * Gives the household a password, its first or another. Whoever was signed in is so no longer.
   *
   * @returns how many devices were signed in
   * @throws {InputRefused} when it is too short, too long or too easily guessed
   */
  setPassword(typed: string): Promise<number>;
  /** Takes the password away; returns whether there was one. Whoever was signed in is so no longer. */
  removePassword(): Promise<boolean>;
  /**
   * Signs a device in.
   *
   * @param typed the password as it was typed
   * @param before the token the device had, which is worth nothing afterwards
   */
  signIn(typed: string, before?: string): Promise<SignInTry>;
  /** The session a token belongs to, where its time is not over. Asking keeps it from ending for want of use. */
  session(token: string): Promise<Session | undefined>;
  /** Every device that is signed in, the first first. */
  sessions(): Promise<Session[]>;
  /** Signs a device out. */
  signOut(token: string): Promise<void>;
  /** Signs every device out; returns how many there were. */
  signOutEverywhere(): Promise<number>;
}
