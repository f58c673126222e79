import type { Shape } from './migration.ts';

/**
 * A garden's own weather is told in its ledger, so that it can be taken back like every other fact. The table it had is
 * dropped: nothing but the laying of the demo garden ever wrote into it.
 */
export async function weatherInTheLedger(db: Shape): Promise<void> {
  await db.schema.dropTable('observed_weather').execute();
  // Which version of the facts a record came with, so that a climate worked out from it is known to be still good.
  await db.schema
    .alterTable('records')
    .addColumn('facts_version', 'integer', (column) => column.notNull().defaultTo(0))
    .execute();
}
