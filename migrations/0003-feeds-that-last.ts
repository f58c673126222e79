import type { Shape } from './migration.ts';

/**
 * What keeps a subscriber's calendar whole: the address a feed had before it got a new one, the last text that was good,
 * and when a calendar app last came for it.
 */
export async function feedsThatLast(db: Shape): Promise<void> {
  await db.schema.alterTable('feeds').addColumn('fetched_at', 'text').execute();
  await db.schema.alterTable('feeds').addColumn('fetched_by', 'text').execute();
  await db.schema
    .createTable('former_addresses')
    .addColumn('garden_id', 'text', (column) => column.notNull())
    .addColumn('feed_id', 'text', (column) => column.notNull())
    .addColumn('token', 'text', (column) => column.primaryKey())
    .addColumn('closed_at', 'text', (column) => column.notNull())
    .addForeignKeyConstraint('former_address_of', ['garden_id', 'feed_id'], 'feeds', ['garden_id', 'id'])
    .execute();
  await db.schema
    .createTable('feed_texts')
    .addColumn('garden_id', 'text', (column) => column.notNull())
    .addColumn('feed_id', 'text', (column) => column.notNull())
    .addColumn('changed_at', 'text', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('feed_texts_key', ['garden_id', 'feed_id'])
    .addForeignKeyConstraint('feed_text_of', ['garden_id', 'feed_id'], 'feeds', ['garden_id', 'id'])
    .execute();
}
