import type { CreateTableBuilder } from 'kysely';
import type { Shape } from './migration.ts';

/**
 * The first tables. Days, instants and JSON are text, booleans 0 or 1, and every id is made by the program, so that
 * the same statements hold on SQLite and on PostgreSQL.
 */
export async function firstTables(db: Shape): Promise<void> {
  await gardenTables(db);
  await weatherTables(db);
  await feedTable(db);
}

async function gardenTables(db: Shape): Promise<void> {
  await db.schema
    .createTable('gardens')
    .addColumn('id', 'text', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('facts_version', 'integer', (column) => column.notNull())
    .execute();
  await ofGarden(db.schema.createTable('ledger'))
    .addColumn('entry', 'integer', (column) => column.notNull())
    .addColumn('recorded_at', 'text', (column) => column.notNull())
    .addColumn('recorded_on', 'text', (column) => column.notNull())
    .addColumn('recorded_by', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('fact', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('ledger_key', ['garden_id', 'entry'])
    .execute();
  await ofGarden(db.schema.createTable('plans'))
    .addColumn('facts_version', 'integer', (column) => column.notNull())
    .addColumn('today', 'text', (column) => column.notNull())
    .addColumn('plan', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('plans_key', ['garden_id'])
    .execute();
}

async function weatherTables(db: Shape): Promise<void> {
  await ofGarden(db.schema.createTable('records'))
    .addColumn('origin', 'text', (column) => column.notNull())
    .addColumn('left_out', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('records_key', ['garden_id'])
    .execute();
  await measured(ofGarden(db.schema.createTable('record_weather')))
    .addPrimaryKeyConstraint('record_weather_key', ['garden_id', 'day'])
    .execute();
  await measured(ofGarden(db.schema.createTable('observed_weather')))
    .addColumn('kind', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('observed_weather_key', ['garden_id', 'day', 'kind'])
    .execute();
}

async function feedTable(db: Shape): Promise<void> {
  await ofGarden(db.schema.createTable('feeds'))
    .addColumn('id', 'text', (column) => column.notNull())
    .addColumn('label', 'text', (column) => column.notNull())
    .addColumn('token', 'text', (column) => column.notNull().unique())
    .addColumn('created_at', 'text', (column) => column.notNull())
    .addColumn('revoked_at', 'text')
    .addPrimaryKeyConstraint('feeds_key', ['garden_id', 'id'])
    .execute();
}

function ofGarden<Name extends string>(table: CreateTableBuilder<Name>): CreateTableBuilder<Name, 'garden_id'> {
  return table.addColumn('garden_id', 'text', (column) => column.notNull().references('gardens.id'));
}

function measured<Name extends string, Columns extends string>(table: CreateTableBuilder<Name, Columns>) {
  return table
    .addColumn('day', 'text', (column) => column.notNull())
    .addColumn('tmin_c', 'double precision')
    .addColumn('tmax_c', 'double precision')
    .addColumn('rain_mm', 'double precision')
    .addColumn('new_snow_mm', 'double precision')
    .addColumn('snow_depth_mm', 'double precision');
}
