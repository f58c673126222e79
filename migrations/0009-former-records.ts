import type { Shape } from './migration.ts';

/** The long record a garden had before the one it has, whole, so that it can be put back. */
export async function formerRecords(db: Shape): Promise<void> {
  await db.schema
    .createTable('former_records')
    .addColumn('garden_id', 'text', (column) => column.primaryKey().references('gardens.id'))
    .addColumn('origin', 'text', (column) => column.notNull())
    .addColumn('left_out', 'text', (column) => column.notNull())
    .addColumn('days', 'text', (column) => column.notNull())
    .execute();
}
