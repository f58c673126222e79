import type { Shape } from './migration.ts';

/**
 * The password of the household, by its hash alone, with the key that signs cookies and forms; and who is signed in, by the
 * hash of what their cookie holds.
 */
export async function householdPassword(db: Shape): Promise<void> {
  await db.schema
    .createTable('household_password')
    .addColumn('row', 'integer', (column) => column.primaryKey())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('cookie_key', 'text', (column) => column.notNull())
    .addColumn('set_at', 'text', (column) => column.notNull())
    .execute();
  await db.schema
    .createTable('sessions')
    .addColumn('token_hash', 'text', (column) => column.primaryKey())
    .addColumn('began_at', 'text', (column) => column.notNull())
    .addColumn('used_at', 'text', (column) => column.notNull())
    .execute();
}
