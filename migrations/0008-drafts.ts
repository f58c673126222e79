import type { Shape } from './migration.ts';

/** Gardens being set up, with the garden each has become; and when a garden was put away, if it is. */
export async function drafts(db: Shape): Promise<void> {
  await db.schema
    .createTable('drafts')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('garden_id', 'text')
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('changed_at', 'text', (column) => column.notNull())
    .addColumn('draft', 'text', (column) => column.notNull())
    .execute();
  await db.schema.alterTable('gardens').addColumn('put_away_at', 'text').execute();
}
