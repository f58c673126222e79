/**
 * Who is signed in: one row for each device, known by the hash of what its cookie holds. Nothing else is kept of it.
 */
import type { Instant } from '../measures/days.ts';
import type { Database } from './tables.ts';

/** A device that is signed in. */
export interface KeptSession {
  tokenHash: string;
  beganAt: Instant;
  /** When it was last seen, to the hour. */
  usedAt: Instant;
}

/** Moments before which a session is over. */
export interface SessionEnds {
  beganBefore: Instant;
  usedBefore: Instant;
}

/** Every session, the oldest first. */
export async function sessions(db: Database): Promise<KeptSession[]> {
  const rows = await db.selectFrom('sessions').selectAll().orderBy('began_at').orderBy('token_hash').execute();
  return rows.map((row) => ({ tokenHash: row.token_hash, beganAt: row.began_at, usedAt: row.used_at }));
}

/** The session a hash belongs to. */
export async function session(db: Database, tokenHash: string): Promise<KeptSession | undefined> {
  const row = await db.selectFrom('sessions').selectAll().where('token_hash', '=', tokenHash).executeTakeFirst();
  return row && { tokenHash, beganAt: row.began_at, usedAt: row.used_at };
}

/** Keeps a new session. */
export async function addSession(db: Database, { tokenHash, beganAt, usedAt }: KeptSession): Promise<void> {
  await db.insertInto('sessions').values({ token_hash: tokenHash, began_at: beganAt, used_at: usedAt }).execute();
}

/** Notes when a session was last seen. */
export async function noteSessionUsed(db: Database, tokenHash: string, at: Instant): Promise<void> {
  await db.updateTable('sessions').set({ used_at: at }).where('token_hash', '=', tokenHash).execute();
}

/** Ends a session, if there is such a one. */
export async function endSession(db: Database, tokenHash: string): Promise<void> {
  await db.deleteFrom('sessions').where('token_hash', '=', tokenHash).execute();
}

/** Ends every session; returns how many there were. */
export async function endSessions(db: Database): Promise<number> {
  const result = await db.deleteFrom('sessions').executeTakeFirst();
  return Number(result.numDeletedRows);
}

/** Clears sessions away that are over. */
export async function clearSessions(db: Database, { beganBefore, usedBefore }: SessionEnds): Promise<void> {
  await db
    .deleteFrom('sessions')
    .where(({ eb, or }) => or([eb('began_at', '<=', beganBefore), eb('used_at', '<=', usedBefore)]))
    .execute();
}
