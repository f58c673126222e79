import type { Shape } from './migration.ts';

/** How each feed is shaped: as JSON, since it is only ever read whole, with how often and when that changed. */
export async function feedShapes(db: Shape): Promise<void> {
  await db.schema
    .alterTable('feeds')
    .addColumn('shape', 'text', (column) => column.notNull().defaultTo('{}'))
    .execute();
  await db.schema
    .alterTable('feeds')
    .addColumn('shape_revision', 'integer', (column) => column.notNull().defaultTo(0))
    .execute();
  await db.schema.alterTable('feeds').addColumn('shaped_at', 'text').execute();
  await db.schema.alterTable('feeds').addColumn('changed_at', 'text').execute();
}
