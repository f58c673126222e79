/**
 * The key that signs a garden's links in mail. It is a secret like the addresses of feeds, and kept readable as they are.
 */
import type { Instant } from '../measures/days.ts';
import type { Database } from './tables.ts';

/** A garden's signing key as text, where it has one. */
export async function signingKey(db: Database, gardenId: string): Promise<string | undefined> {
  const row = await db
    .selectFrom('signing_keys')
    .select('signing_key')
    .where('garden_id', '=', gardenId)
    .executeTakeFirst();
  return row?.signing_key;
}

/** Keeps the signing key of a garden that has none. */
export async function keepSigningKey(db: Database, gardenId: string, key: string, at: Instant): Promise<void> {
  await db.insertInto('signing_keys').values({ garden_id: gardenId, signing_key: key, made_at: at }).execute();
}
