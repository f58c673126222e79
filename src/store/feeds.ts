/**
 * Calendar feeds: each an address of its own that can be shown again, given anew and revoked.
 */
import { type FeedShape, feedShapeSchema } from '../calendar/feed-shape.ts';
import type { Instant } from '../measures/days.ts';
import { parseJson } from './json.ts';
import { type Database, type FeedRow, writing } from './tables.ts';

/** A calendar feed of one garden. */
export interface Feed {
  id: string;
  gardenId: string;
  label: string;
  /** The secret part of its address. */
  token: string;
  createdAt: Instant;
  revokedAt?: Instant;
  /** When it was last asked for, and by which kind of program; some time may pass before it is kept. */
  lastFetch?: Fetch;
  shape: FeedShape;
  /** Times the shape was changed. */
  shapeRevision: number;
  /** When it last was, if ever. */
  shapedAt?: Instant;
  /** When its label or its shape last changed, or it was opened again, if ever. */
  changedAt?: Instant;
}

/** What can be changed about a feed that stays at its address. */
export type FeedChange = Pick<Feed, 'label' | 'shape' | 'shapeRevision' | 'shapedAt' | 'changedAt'>;

/** One reading of a feed. */
export interface Fetch {
  at: Instant;
  /** The name a program gives itself, such as "Evolution". Never an address. */
  by: string;
}

/** What stands behind a token: a feed, and the moment the token was closed if it no longer opens it. */
export interface FeedAddress {
  feed: Feed;
  closedAt?: Instant;
  /** Whether its garden was put away; a token that is the feed's own, and not revoked, opens it again with the garden. */
  isPutAway?: true;
}

/** Names one feed of one garden. */
export interface FeedName {
  gardenId: string;
  feedId: string;
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
  const { id, gardenId, token, createdAt, revokedAt } = feed;
  const address = { garden_id: gardenId, id, token, created_at: createdAt, revoked_at: revokedAt ?? null };
  await db
    .insertInto('feeds')
    .values({ ...address, ...changeableOf(feed) })
    .execute();
}

/** Gives an open feed another label or shape. Returns whether there was such an open feed. */
export async function changeFeed(db: Database, { gardenId, feedId }: FeedName, change: FeedChange): Promise<boolean> {
  const result = await db
    .updateTable('feeds')
    .set(changeableOf(change))
    .where('garden_id', '=', gardenId)
    .where('id', '=', feedId)
    .where('revoked_at', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Gives a feed, open or revoked, what follows for it from a change of its garden. */
export async function followInFeed(db: Database, { gardenId, feedId }: FeedName, change: FeedChange): Promise<void> {
  await db
    .updateTable('feeds')
    .set(changeableOf(change))
    .where('garden_id', '=', gardenId)
    .where('id', '=', feedId)
    .execute();
}

function changeableOf({ label, shape, shapeRevision, shapedAt, changedAt }: FeedChange) {
  return {
    label,
    shape: JSON.stringify(shape),
    shape_revision: shapeRevision,
    shaped_at: shapedAt ?? null,
    changed_at: changedAt ?? null,
  };
}

/** Closes a feed's address until it is opened again, if ever. Returns whether there was such an open feed. */
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

/** Opens a revoked feed again at the address it had. Returns whether there was such a revoked feed. */
export async function reopenFeed(db: Database, { gardenId, feedId }: FeedName, at: Instant): Promise<boolean> {
  const result = await db
    .updateTable('feeds')
    .set({ revoked_at: null, changed_at: at })
    .where('garden_id', '=', gardenId)
    .where('id', '=', feedId)
    .where('revoked_at', 'is not', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Gives an open feed another token and remembers the one it had. Returns whether there was such an open feed. */
export function rotateFeed(
  db: Database,
  { gardenId, feedId }: FeedName,
  { token, at }: { token: string; at: Instant },
): Promise<boolean> {
  return writing(db, async (transaction) => {
    const row = await transaction
      .selectFrom('feeds')
      .select('token')
      .where('garden_id', '=', gardenId)
      .where('id', '=', feedId)
      .where('revoked_at', 'is', null)
      .executeTakeFirst();
    if (row === undefined) return false;
    const former = { garden_id: gardenId, feed_id: feedId, token: row.token, closed_at: at };
    await transaction.insertInto('former_addresses').values(former).execute();
    await transaction
      .updateTable('feeds')
      .set({ token })
      .where('garden_id', '=', gardenId)
      .where('id', '=', feedId)
      .execute();
    return true;
  });
}

/** What stands behind a token, closed ones included. Both places are asked whatever the first one says. */
export async function findFeedAddress(db: Database, token: string): Promise<FeedAddress | undefined> {
  const current = await db.selectFrom('feeds').selectAll().where('token', '=', token).executeTakeFirst();
  const former = await db
    .selectFrom('former_addresses')
    .innerJoin('feeds', (join) =>
      join
        .onRef('feeds.garden_id', '=', 'former_addresses.garden_id')
        .onRef('feeds.id', '=', 'former_addresses.feed_id'),
    )
    .selectAll('feeds')
    .select('former_addresses.closed_at')
    .where('former_addresses.token', '=', token)
    .executeTakeFirst();
  const found = former ?? current;
  if (found === undefined) return undefined;
  const { put_away_at: putAwayAt } = await db
    .selectFrom('gardens')
    .select('put_away_at')
    .where('id', '=', found.garden_id)
    .executeTakeFirstOrThrow();
  const away = putAwayAt === null ? {} : { isPutAway: true as const };
  if (former !== undefined) return { feed: feedOf(former), closedAt: former.closed_at, ...away };
  const closedAt = found.revoked_at ?? putAwayAt;
  return {
    feed: feedOf(found),
    ...(closedAt === null ? {} : { closedAt }),
    ...(found.revoked_at === null ? away : {}),
  };
}

/** Keeps when feeds were last read, all at once. A feed that is not there is passed over. */
export function noteFetches(db: Database, fetches: readonly (FeedName & Fetch)[]): Promise<void> {
  return writing(db, async (transaction) => {
    for (const { gardenId, feedId, at, by } of fetches) {
      await transaction
        .updateTable('feeds')
        .set({ fetched_at: at, fetched_by: by })
        .where('garden_id', '=', gardenId)
        .where('id', '=', feedId)
        .execute();
    }
  });
}

function feedOf(row: FeedRow): Feed {
  return {
    id: row.id,
    gardenId: row.garden_id,
    label: row.label,
    token: row.token,
    createdAt: row.created_at,
    ...(row.revoked_at === null ? {} : { revokedAt: row.revoked_at }),
    shape: parseJson(feedShapeSchema, row.shape, `shape of ${row.garden_id} ${row.id}`),
    shapeRevision: row.shape_revision,
    ...(row.shaped_at === null ? {} : { shapedAt: row.shaped_at }),
    ...(row.changed_at === null ? {} : { changedAt: row.changed_at }),
    ...(row.fetched_at === null ? {} : { lastFetch: { at: row.fetched_at, by: row.fetched_by ?? '' } }),
  };
}
