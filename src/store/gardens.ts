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

/** A garden that was put away: nothing of it is shown, planned or mailed until it is given back. */
export interface PutAway {
  id: string;
  /** The name it was first given. */
  name: string;
  at: Instant;
}

/** Ids of every garden that is not put away, oldest first. */
export async function gardenIds(db: Database): Promise<string[]> {
  const rows = await db
    .selectFrom('gardens')
    .select('id')
    .where('put_away_at', 'is', null)
    .orderBy('created_at')
    .orderBy('id')
    .execute();
  return rows.map(({ id }) => id);
}

/** The gardens that are put away, the latest first. */
export async function gardensPutAway(db: Database): Promise<PutAway[]> {
  const rows = await db
    .selectFrom('gardens')
    .select(['id', 'name', 'put_away_at'])
    .where('put_away_at', 'is not', null)
    .orderBy('put_away_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map(({ id, name, put_away_at }) => ({ id, name, at: put_away_at ?? '' }));
}

/** Puts a garden away, or gives it back where no moment is given. Returns whether that changed anything. */
export async function putAwayGarden(db: Database, gardenId: string, at: Instant | undefined): Promise<boolean> {
  const result = await db
    .updateTable('gardens')
    .set({ put_away_at: at ?? null })
    .where('id', '=', gardenId)
    .where('put_away_at', at === undefined ? 'is not' : 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Starts an empty garden at facts version 0. */
export async function createGarden(db: Database, { id, name, createdAt }: NewGarden): Promise<void> {
  await db.insertInto('gardens').values({ id, name, created_at: createdAt, facts_version: 0 }).execute();
}

/**
 * Version of everything a plan is made from: raised by one with each accepted change of the ledger or of the weather.
 *
 * @throws {InputRefused} when there is no such garden, or it was put away
 */
export async function factsVersion(db: Database, gardenId: string): Promise<number> {
  const row = await db
    .selectFrom('gardens')
    .select(['facts_version', 'put_away_at'])
    .where('id', '=', gardenId)
    .executeTakeFirst();
  if (!row) throw unknownGarden(gardenId);
  if (row.put_away_at !== null) throw putAwayRefusal(gardenId, row.put_away_at);
  return row.facts_version;
}

/** Raises the facts version and returns the new one. Call inside the transaction that changes the facts. */
export async function raiseFactsVersion(db: Database, gardenId: string): Promise<number> {
  const version = (await factsVersion(db, gardenId)) + 1;
  await db.updateTable('gardens').set({ facts_version: version }).where('id', '=', gardenId).execute();
  return version;
}

function putAwayRefusal(gardenId: string, at: Instant): InputRefused {
  return new InputRefused('That garden was put away.', [
    {
      where: gardenId,
      what: `was put away on ${at.slice(0, 10)}: nothing is planned or written down for it.`,
      mend: 'Give it back on the page of gardens first.',
    },
  ]);
}

function unknownGarden(gardenId: string): InputRefused {
  return new InputRefused('There is no such garden.', [
    { where: 'garden id', what: `"${gardenId}" is not known here.`, mend: 'Bring the garden in first.' },
  ]);
}
