/**
 * The ledger on disk: rows are added, never changed and never taken out.
 */
import { factSchema } from '../garden/facts.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { withMemberIds } from '../garden/member-ids.ts';
import { factsVersion, raiseFactsVersion } from './gardens.ts';
import { parseJson } from './json.ts';
import { type Database, writing } from './tables.ts';

/** An entry before the store has numbered it. */
export type NewEntry = Omit<LedgerEntry, 'entry'>;

/** What adding to the ledger came to: the new facts version, or that the facts had moved on and nothing was added. */
export type Appended = { outcome: 'added'; version: number } | { outcome: 'stale' };

/**
 * A garden's entries, oldest first.
 *
 * @throws {InputRefused} when an entry on disk is not a fact this program knows
 */
export async function ledger(db: Database, gardenId: string): Promise<LedgerEntry[]> {
  const rows = await db.selectFrom('ledger').selectAll().where('garden_id', '=', gardenId).orderBy('entry').execute();
  const entries = rows.map((row) => ({
    entry: row.entry,
    recordedAt: row.recorded_at,
    recordedOn: row.recorded_on,
    by: row.recorded_by,
    fact: parseJson(factSchema, row.fact, `ledger of ${gardenId}, entry ${row.entry}`),
  }));
  return withMemberIds(entries);
}

/** Adds entries, all or none, if the facts still stand at the version the caller read. */
export function append(
  db: Database,
  gardenId: string,
  expectedVersion: number,
  entries: readonly NewEntry[],
): Promise<Appended> {
  return writing(db, async (transaction) => {
    const version = await factsVersion(transaction, gardenId);
    if (version !== expectedVersion) return { outcome: 'stale' };
    if (entries.length === 0) return { outcome: 'added', version };
    const last = await lastEntry(transaction, gardenId);
    const numbered = entries.map((entry, index) => ({ ...entry, entry: last + 1 + index }));
    await transaction
      .insertInto('ledger')
      .values(numbered.map((entry) => rowOf(gardenId, entry)))
      .execute();
    return { outcome: 'added', version: await raiseFactsVersion(transaction, gardenId) };
  });
}

async function lastEntry(db: Database, gardenId: string): Promise<number> {
  const row = await db
    .selectFrom('ledger')
    .select(({ fn }) => fn.max('entry').as('entry'))
    .where('garden_id', '=', gardenId)
    .executeTakeFirst();
  return row?.entry ?? 0;
}

function rowOf(gardenId: string, { entry, recordedAt, recordedOn, by, fact }: LedgerEntry) {
  return {
    garden_id: gardenId,
    entry,
    recorded_at: recordedAt,
    recorded_on: recordedOn,
    recorded_by: by,
    kind: fact.kind,
    fact: JSON.stringify(fact),
  };
}
