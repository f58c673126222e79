import type { Shape } from './migration.ts';

/** The key that signs a garden's links in mail. Unlike other keys it is kept as it is, for it has to sign again. */
export async function signingKeys(db: Shape): Promise<void> {
  await db.schema
    .createTable('signing_keys')
    .addColumn('garden_id', 'text', (column) => column.notNull().references('gardens.id'))
    .addColumn('signing_key', 'text', (column) => column.notNull())
    .addColumn('made_at', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('signing_keys_key', ['garden_id'])
    .execute();
}
