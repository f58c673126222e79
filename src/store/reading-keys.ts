/**
 * Keys by which a script may tell of piles. Only what a key hashes to is kept.
 */
import type { Instant } from '../measures/days.ts';
import type { Database, ReadingKeyRow } from './tables.ts';

/** A key of one garden, without the key itself. */
export interface ReadingKey {
  id: string;
  gardenId: string;
  label: string;
  createdAt: Instant;
  revokedAt?: Instant;
}

/** A garden's keys, revoked ones included, oldest first. */
export async function readingKeys(db: Database, gardenId: string): Promise<ReadingKey[]> {
  const rows = await db
    .selectFrom('reading_keys')
    .selectAll()
    .where('garden_id', '=', gardenId)
    .orderBy('id')
    .execute();
  return rows.map(keyOf);
}

/** Keeps a new key by its hash. */
export async function addReadingKey(db: Database, key: ReadingKey, keyHash: string): Promise<void> {
  const { id, gardenId, label, createdAt } = key;
  await db
    .insertInto('reading_keys')
    .values({ garden_id: gardenId, id, label, key_hash: keyHash, created_at: createdAt, revoked_at: null })
    .execute();
}

/** Closes a key for good. Returns whether there was such an open key. */
export async function revokeReadingKey(db: Database, gardenId: string, id: string, at: Instant): Promise<boolean> {
  const result = await db
    .updateTable('reading_keys')
    .set({ revoked_at: at })
    .where('garden_id', '=', gardenId)
    .where('id', '=', id)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** The open key that a hash belongs to. */
export async function findReadingKey(db: Database, keyHash: string): Promise<ReadingKey | undefined> {
  const row = await db
    .selectFrom('reading_keys')
    .selectAll()
    .where('key_hash', '=', keyHash)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
  return row && keyOf(row);
}

function keyOf({ garden_id, id, label, created_at, revoked_at }: ReadingKeyRow): ReadingKey {
  return {
    id,
    gardenId: garden_id,
    label,
    createdAt: created_at,
    ...(revoked_at === null ? {} : { revokedAt: revoked_at }),
  };
}
