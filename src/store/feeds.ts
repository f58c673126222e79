/**
 * Calendar feeds: each an address of its own that can be shown again and revoked.
 */
import type { Instant } from '../measures/days.ts';
import type { Database, FeedRow } from './tables.ts';

/** A calendar feed of one garden. */
export interface Feed {
  id: string;
  gardenId: string;
  label: string;
  /** The secret part of its address. */
  token: string;
  createdAt: Instant;
  revokedAt?: Instant;
}

/** A garden's feeds, revoked ones included, oldest first. */
export async function feeds(db: Database, gardenId: string): Promise<Feed[]> {
  const rows = await db
    .selectFrom('feeds')
    .selectAll()
    .where('garden_id', '=', gardenId)
    .orderBy('created_at')
    .orderBy('id')
    .execute();
  return rows.map(feedOf);
}

/** Keeps a new feed. */
export async function addFeed(db: Database, feed: Feed): Promise<void> {
  const { id, gardenId, label, token, createdAt, revokedAt } = feed;
  await db
    .insertInto('feeds')
    .values({ garden_id: gardenId, id, label, token, created_at: createdAt, revoked_at: revokedAt ?? null })
    .execute();
}

/** Closes a feed's address for good. Returns whether there was such an open feed. */
export async function revokeFeed(db: Database, gardenId: string, feedId: string, at: Instant): Promise<boolean> {
  const result = await db
    .updateTable('feeds')
    .set({ revoked_at: at })
    .where('garden_id', '=', gardenId)
    .where('id', '=', feedId)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** The feed behind a token, unless it is unknown or revoked. */
export async function findFeedByToken(db: Database, token: string): Promise<Feed | undefined> {
  const row = await db
    .selectFrom('feeds')
    .selectAll()
    .where('token', '=', token)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
  return row && feedOf(row);
}

function feedOf(row: FeedRow): Feed {
  return {
    id: row.id,
    gardenId: row.garden_id,
    label: row.label,
    token: row.token,
    createdAt: row.created_at,
    ...(row.revoked_at === null ? {} : { revokedAt: row.revoked_at }),
  };
}
