import type { Shape } from './migration.ts';

/** The log of lists sent: one row a week and member, written before anything is handed over. */
export async function deliveries(db: Shape): Promise<void> {
  await db.schema
    .createTable('deliveries')
    .addColumn('garden_id', 'text', (column) => column.notNull().references('gardens.id'))
    .addColumn('member', 'text', (column) => column.notNull())
    .addColumn('monday', 'text', (column) => column.notNull())
    .addColumn('state', 'text', (column) => column.notNull())
    .addColumn('message_id', 'text')
    .addColumn('way', 'text')
    .addColumn('from_address', 'text')
    .addColumn('to_address', 'text')
    .addColumn('tries', 'integer', (column) => column.notNull())
    .addColumn('changed_at', 'text', (column) => column.notNull())
    .addColumn('claimed_by', 'text')
    .addColumn('claimed_until', 'text')
    .addColumn('next_try_at', 'text')
    .addColumn('sent_at', 'text')
    .addColumn('problem', 'text')
    .addPrimaryKeyConstraint('deliveries_key', ['garden_id', 'member', 'monday'])
    .execute();
}
