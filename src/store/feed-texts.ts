/**
 * The last good text of each feed: what its readers are shown when a new one cannot be made.
 */
import type { Instant } from '../measures/days.ts';
import type { FeedName } from './feeds.ts';
import type { Database } from './tables.ts';

/** A feed's text and when anything in it last changed. */
export interface FeedText {
  body: string;
  changedAt: Instant;
}

/** Keeps a text in place of the one there was. */
export async function saveFeedText(db: Database, { gardenId, feedId }: FeedName, text: FeedText): Promise<void> {
  const row = { changed_at: text.changedAt, body: text.body };
  await db
    .insertInto('feed_texts')
    .values({ garden_id: gardenId, feed_id: feedId, ...row })
    .onConflict((conflict) => conflict.columns(['garden_id', 'feed_id']).doUpdateSet(row))
    .execute();
}

/** The last good text kept of a feed, if any. */
export async function feedText(db: Database, { gardenId, feedId }: FeedName): Promise<FeedText | undefined> {
  const row = await db
    .selectFrom('feed_texts')
    .select(['body', 'changed_at'])
    .where('garden_id', '=', gardenId)
    .where('feed_id', '=', feedId)
    .executeTakeFirst();
  return row && { body: row.body, changedAt: row.changed_at };
}
