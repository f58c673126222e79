import type { Shape } from './migration.ts';

/** Keys by which a script may tell of piles: only what each hashes to is kept. */
export async function readingKeys(db: Shape): Promise<void> {
  await db.schema
    .createTable('reading_keys')
    .addColumn('garden_id', 'text', (column) => column.notNull().references('gardens.id'))
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('label', 'text', (column) => column.notNull())
    .addColumn('key_hash', 'text', (column) => column.notNull().unique())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('revoked_at', 'text')
    .addPrimaryKeyConstraint('reading_keys_key', ['garden_id', 'id'])
    .execute();
}
