/**
 * The gardens of the household, and the version of each one's facts.
 */
import { InputRefused } from '../garden/problem.ts';
import type { Instant } from '../measures/days.ts';
import type { Database } from './tables.ts';

/** A garden to be kept: its name is the one it was first given. */
export interface NewGarden {
  id: string;
  name: string;
  createdAt: Instant;
}

/** Ids of every garden, oldest first. */
export async function gardenIds(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('gardens').select('id').orderBy('created_at').orderBy('id').execute();
  return rows.map(({ id }) => id);
}

/** Starts an empty garden at facts version 0. */
export async function createGarden(db: Database, { id, name, createdAt }: NewGarden): Promise<void> {
  await db.insertInto('gardens').values({ id, name, created_at: createdAt, facts_version: 0 }).execute();
}

/**
 * Version of everything a plan is made from: raised by one with each accepted change of the ledger or of the weather.
 *
 * @throws {InputRefused} when there is no such garden
 */
export async function factsVersion(db: Database, gardenId: string): Promise<number> {
  const row = await db.selectFrom('gardens').select('facts_version').where('id', '=', gardenId).executeTakeFirst();
  if (!row) throw unknownGarden(gardenId);
  return row.facts_version;
}

/** Raises the facts version and returns the new one. Call inside the transaction that changes the facts. */
export async function raiseFactsVersion(db: Database, gardenId: string): Promise<number> {
  const version = (await factsVersion(db, gardenId)) + 1;
  await db.updateTable('gardens').set({ facts_version: version }).where('id', '=', gardenId).execute();
  return version;
}

function unknownGarden(gardenId: string): InputRefused {
  return new InputRefused('There is no such garden.', [
    { where: 'garden id', what: `"${gardenId}" is not known here.`, mend: 'Bring the garden in first.' },
  ]);
}
