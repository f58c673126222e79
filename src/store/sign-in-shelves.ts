/**
 * What the store keeps of the household as a whole: its password, and who is signed in.
 */
import type { Instant } from '../measures/days.ts';
import { dropPassword, type KeptPassword, keepPassword, password } from './password.ts';
import {
  addSession,
  clearSessions,
  endSession,
  endSessions,
  type KeptSession,
  noteSessionUsed,
  type SessionEnds,
  session,
  sessions,
} from './sessions.ts';
import type { Database } from './tables.ts';

export interface SignInShelves {
  /** The household's password as it is kept, where it has one. */
  password(): Promise<KeptPassword | undefined>;
  /** Keeps a password in place of the one there was. */
  keepPassword(kept: KeptPassword): Promise<void>;
  /** Takes the password away; returns whether there was one. */
  dropPassword(): Promise<boolean>;
  /** Every device that is signed in, the first first; those whose time is over may be among them. */
  sessions(): Promise<KeptSession[]>;
  /** The session a hash belongs to. */
  session(tokenHash: string): Promise<KeptSession | undefined>;
  /** Keeps a new session. */
  addSession(session: KeptSession): Promise<void>;
  /** Notes when a session was last seen. */
  noteSessionUsed(tokenHash: string, at: Instant): Promise<void>;
  /** Ends a session, if there is such a one. */
  endSession(tokenHash: string): Promise<void>;
  /** Ends every session; returns how many there were. */
  endSessions(): Promise<number>;
  /** Clears sessions away that are over. */
  clearSessions(ends: SessionEnds): Promise<void>;
}

/** These shelves of a database. */
export function signInShelves(db: Database): SignInShelves {
  return {
    password: () => password(db),
    keepPassword: (kept) => keepPassword(db, kept),
    dropPassword: () => dropPassword(db),
    sessions: () => sessions(db),
    session: (tokenHash) => session(db, tokenHash),
    addSession: (added) => addSession(db, added),
    noteSessionUsed: (tokenHash, at) => noteSessionUsed(db, tokenHash, at),
    endSession: (tokenHash) => endSession(db, tokenHash),
    endSessions: () => endSessions(db),
    clearSessions: (ends) => clearSessions(db, ends),
  };
}
