/**
 * Gardens being set up, each until it has become a garden or is thrown away.
 */
import { type SetUpDraft, setUpDraftSchema } from '../garden/set-up-draft.ts';
import type { Instant } from '../measures/days.ts';
import { StoreFault } from './fault.ts';
import { parseJson } from './json.ts';
import type { Database, DraftRow } from './tables.ts';

/** A draft as it is kept. */
export interface KeptDraft {
  id: string;
  createdAt: Instant;
  changedAt: Instant;
  /** The garden it became, once it has. */
  gardenId?: string;
  draft: SetUpDraft;
}

/** A draft in a list: without what was told where that cannot be read any more. */
export type ListedDraft = Omit<KeptDraft, 'draft'> & { draft?: SetUpDraft };

/** Drafts that have not become a garden, the one last changed first. */
export async function drafts(db: Database): Promise<ListedDraft[]> {
  const rows = await db
    .selectFrom('drafts')
    .selectAll()
    .where('garden_id', 'is', null)
    .orderBy('changed_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map(listedOf);
}

/** One draft, also one that has become a garden. */
export async function draft(db: Database, id: string): Promise<KeptDraft | undefined> {
  const row = await db.selectFrom('drafts').selectAll().where('id', '=', id).executeTakeFirst();
  return row && keptOf(row);
}

/** Keeps a new draft. */
export async function addDraft(db: Database, { id, createdAt, changedAt, draft: told }: KeptDraft): Promise<void> {
  const times = { created_at: createdAt, changed_at: changedAt };
  await db
    .insertInto('drafts')
    .values({ id, garden_id: null, ...times, draft: JSON.stringify(told) })
    .execute();
}

/** Keeps a draft in place of what it was. Returns whether there is such a draft that has not become a garden. */
export async function changeDraft(
  db: Database,
  { id, changedAt, draft: told }: Pick<KeptDraft, 'id' | 'changedAt' | 'draft'>,
): Promise<boolean> {
  const result = await db
    .updateTable('drafts')
    .set({ changed_at: changedAt, draft: JSON.stringify(told) })
    .where('id', '=', id)
    .where('garden_id', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Notes the garden a draft becomes. Returns false where it has become one already, or is not there. */
export async function claimDraft(db: Database, id: string, gardenId: string): Promise<boolean> {
  const result = await db
    .updateTable('drafts')
    .set({ garden_id: gardenId })
    .where('id', '=', id)
    .where('garden_id', 'is', null)
    .executeTakeFirst();
  return result.numUpdatedRows > 0n;
}

/** Throws a draft away. Returns whether there was one that had not become a garden. */
export async function dropDraft(db: Database, id: string): Promise<boolean> {
  const result = await db.deleteFrom('drafts').where('id', '=', id).where('garden_id', 'is', null).executeTakeFirst();
  return result.numDeletedRows > 0n;
}

function listedOf(row: DraftRow): ListedDraft {
  try {
    return keptOf(row);
  } catch (error) {
    if (error instanceof StoreFault) return { id: row.id, createdAt: row.created_at, changedAt: row.changed_at };
    throw error;
  }
}

function keptOf(row: DraftRow): KeptDraft {
  return {
    id: row.id,
    createdAt: row.created_at,
    changedAt: row.changed_at,
    ...(row.garden_id === null ? {} : { gardenId: row.garden_id }),
    draft: parseJson(setUpDraftSchema, row.draft, `draft ${row.id}`),
  };
}
