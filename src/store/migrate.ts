/**
 * Brings a database to the shape this program knows, one numbered step at a time.
 */
import { existsSync } from 'node:fs';
import type { Migration } from '../../migrations/migration.ts';
import { InputRefused } from '../garden/problem.ts';
import type { Instant } from '../measures/days.ts';
import type { Connection } from './connection.ts';
import { copyDatabase } from './copy.ts';
import { stampOf } from './daily-copies.ts';
import type { Database } from './tables.ts';

/**
 * Runs every migration the database has not had, each in its own transaction. A database that already held something
 * is copied first, next to itself, under a name with its version and the moment.
 *
 * @returns the copy made, if any
 * @throws {InputRefused} when the database is newer than the program
 */
export async function migrate(
  connection: Connection,
  steps: readonly Migration[],
  now: Instant,
): Promise<string | undefined> {
  const { db } = connection;
  const version = await versionOf(db);
  const missing = steps.filter((step) => step.version > version);
  refuseNewer(connection.sqlite.name, version, newestOf(steps));
  if (missing.length === 0) return undefined;
  const copy = connection.existed ? copyName(connection.sqlite.name, version, now) : undefined;
  if (copy !== undefined) await copyDatabase(connection.sqlite.name, copy);
  for (const step of missing) await apply(db, step, now);
  return copy;
}

async function versionOf(db: Database): Promise<number> {
  await db.schema
    .createTable('migrations')
    .ifNotExists()
    .addColumn('version', 'integer', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('applied_at', 'text', (column) => column.notNull())
    .execute();
  const row = await db
    .selectFrom('migrations')
    .select(({ fn }) => fn.max('version').as('version'))
    .executeTakeFirst();
  return row?.version ?? 0;
}

async function apply(db: Database, step: Migration, now: Instant): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    // Two programs may start on one database at once: the second finds the step already taken.
    const taken = await transaction
      .selectFrom('migrations')
      .where('version', '=', step.version)
      .select('version')
      .execute();
    if (taken.length > 0) return;
    await step.up(transaction);
    await transaction
      .insertInto('migrations')
      .values({ version: step.version, name: step.name, applied_at: now })
      .execute();
  });
}

/**
 * "loamtide.db.version-1.20270418T093000Z.copy"; with a number in front of the ending where there is one of that moment already:
 * from a start that was killed within the second, or on a computer whose clock begins anew at each start.
 */
function copyName(file: string, version: number, now: Instant): string {
  const beginning = `${file}.version-${version}.${stampOf(now)}`;
  let name = `${beginning}.copy`;
  for (let next = 2; existsSync(name); next += 1) name = `${beginning}.${next}.copy`;
  return name;
}

/** The version a database has after every step. */
export function newestOf(steps: readonly Migration[]): number {
  return steps.at(-1)?.version ?? 0;
}

/** @throws {InputRefused} when a database is newer than the program */
export function refuseNewer(file: string, version: number, newest: number): void {
  if (version <= newest) return;
  throw new InputRefused('The data cannot be opened.', [
    {
      where: file,
      what: `The database has version ${version}; this program knows versions up to ${newest}.`,
      mend: 'Run the newer program that wrote it, or put back a copy made before (docs/copies-and-faults.md).',
    },
  ]);
}
