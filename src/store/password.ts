/**
 * The password of the household. Only what it hashes to is kept, with the key that signs cookies and forms while it holds.
 */
import type { Instant } from '../measures/days.ts';
import type { Database } from './tables.ts';

/** The household's password as it is kept. */
export interface KeptPassword {
  /** Salt, cost and hash in one text; see steward/sign-in/password-hash.ts. */
  hash: string;
  /** Signs cookies and forms. */
  cookieKey: string;
  setAt: Instant;
}

/** There is one household, and so one row. */
const ONLY_ROW = 1;

/** The household's password, where it has one. */
export async function password(db: Database): Promise<KeptPassword | undefined> {
  const row = await db.selectFrom('household_password').selectAll().where('row', '=', ONLY_ROW).executeTakeFirst();
  return row && { hash: row.hash, cookieKey: row.cookie_key, setAt: row.set_at };
}

/** Keeps a password in place of the one there was. */
export async function keepPassword(db: Database, { hash, cookieKey, setAt }: KeptPassword): Promise<void> {
  const values = { hash, cookie_key: cookieKey, set_at: setAt };
  await db
    .insertInto('household_password')
    .values({ row: ONLY_ROW, ...values })
    .onConflict((conflict) => conflict.column('row').doUpdateSet(values))
    .execute();
}

/** Takes the password away. Returns whether there was one. */
export async function dropPassword(db: Database): Promise<boolean> {
  const result = await db.deleteFrom('household_password').executeTakeFirst();
  return result.numDeletedRows > 0n;
}
