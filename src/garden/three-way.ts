/**
 * What is left of a garden's mends where a new garden file is brought in: a change stays where the file still says what the
 * change found; where the file says otherwise by now, the file is the later word.
 */
import { gardenFileOf } from './export-garden-file.ts';
import type { Garden } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import type { LedgerEntry } from './ledger.ts';
import { isAlike, mendedBy } from './mended-file.ts';
import { countOf, inOneForm } from './one-form.ts';
import { HELD_IN } from './orphans.ts';
import type { FieldChange, IdList, RowChange, RowList, StoredEdit } from './stored-edit.ts';
import { Fold } from './with-facts.ts';

/**
 * The facts, with those mends, or parts of them, that a new file leaves standing.
 *
 * @param told the garden as its file told it until now
 * @param next the garden as the new file alone tells it
 */
export function stillMended(told: Garden, next: Garden, facts: readonly LedgerEntry[]): LedgerEntry[] {
  if (facts.every(({ fact }) => fact.kind !== 'garden-mended')) return [...facts];
  const [was, will] = [new Fold(told), new Fold(next)];
  return facts.flatMap((entry) => {
    const kept = entry.fact.kind === 'garden-mended' ? standing(entry, was.garden(), will.garden()) : entry;
    was.take(entry);
    if (kept !== undefined) will.take(kept);
    return kept ?? [];
  });
}

/** A mend with its changes of logged weather alone, which no garden file tells of; nothing where it has none. */
export function ofWeatherAlone(entry: LedgerEntry): LedgerEntry | undefined {
  if (entry.fact.kind !== 'garden-mended') return entry;
  return withEdits(
    entry,
    entry.fact.edits.filter(({ how }) => how === 'days' || how === 'days-gone'),
  );
}

/** A mend without its changes of wishes; nothing where it has no others. */
export function butOfWishes(entry: LedgerEntry): LedgerEntry | undefined {
  if (entry.fact.kind !== 'garden-mended') return entry;
  return withEdits(
    entry,
    entry.fact.edits.filter((edit) => edit.how !== 'row' || edit.list !== 'wishes'),
  );
}

function standing(entry: LedgerEntry, was: Garden, will: Garden): LedgerEntry | undefined {
  if (entry.fact.kind !== 'garden-mended') return entry;
  let [found, now] = [gardenFileOf(was), gardenFileOf(will)];
  const edits = entry.fact.edits.flatMap((edit) => {
    const kept = standingEdit(edit, found, now);
    found = mendedBy(found, edit);
    if (kept !== undefined) now = mendedBy(now, kept);
    return kept ?? [];
  });
  return withEdits(entry, edits);
}

function withEdits(entry: LedgerEntry, edits: StoredEdit[]): LedgerEntry | undefined {
  return edits.length === 0 ? undefined : { ...entry, fact: { kind: 'garden-mended', edits } };
}

/** What is left of an edit that found one file, where another now tells the garden. */
function standingEdit(edit: StoredEdit, found: GardenFile, now: GardenFile): StoredEdit | undefined {
  switch (edit.how) {
    case 'added':
      return rowIn(now, edit) === undefined ? edit : undefined;
    case 'gone':
      return isSame(rowIn(found, edit), rowIn(now, edit)) && !holdsMore(edit, found, now) ? edit : undefined;
    case 'changed': {
      const [was, is] = [rowIn(found, edit), rowIn(now, edit)];
      if (was === undefined || is === undefined) return undefined;
      const fields = fieldsStanding(edit.fields, was, is);
      const logs = edit.logs
        .map(({ key, rows }) => ({
          key,
          rows: rows.flatMap((row) => rowStanding(row, listIn(was, key), listIn(is, key)) ?? []),
        }))
        .filter(({ rows }) => rows.length > 0);
      return fields.length + logs.length === 0 ? undefined : { ...edit, fields, logs };
    }
    case 'row': {
      const { how, list, was, row } = edit;
      const left = rowStanding(edit, found[list], now[list]);
      const isToldOtherwise =
        was === undefined && row !== undefined && countAlike(now, list, row) > countAlike(found, list, row);
      if (left === undefined || isToldOtherwise) return undefined;
      return { how, list, ...(left.was && was ? { was } : {}), ...(left.row && row ? { row } : {}) };
    }
    case 'part-changed': {
      const fields = fieldsStanding(edit.fields, { ...found[edit.part] }, { ...now[edit.part] });
      return fields.length === 0 ? undefined : { ...edit, fields };
    }
    case 'part-replaced':
      return isSame(found[edit.part], now[edit.part]) ? edit : undefined;
    case 'days':
    case 'days-gone':
      return edit;
    default:
      return edit satisfies never;
  }
}

type Row = Readonly<Record<string, unknown>>;

function fieldsStanding(fields: readonly FieldChange[], was: Row, is: Row): FieldChange[] {
  return fields.filter(({ key }) => isSame(was[key], is[key]));
}

/**
 * What is left of a change of a row: one to be added stands where the list does not tell it already; one to be changed or
 * taken out, where it is as often as it was. Where the file tells a changed row as it was changed, and a report the row as it
 * was before, that one is taken out.
 */
function rowStanding(
  { was, row }: RowChange,
  found: readonly unknown[],
  now: readonly unknown[],
): RowChange | undefined {
  const isTold = row !== undefined && countOf(now, row) > countOf(found, row);
  if (was === undefined) return isTold ? undefined : { row };
  const isLeft = countOf(now, was) > 0 && countOf(now, was) >= countOf(found, was);
  if (!isLeft) return undefined;
  return isTold || row === undefined ? { was } : { was, row };
}

/** Rows that are known by the same as one, whatever else they say. */
function countAlike(file: GardenFile, list: RowList, row: Row): number {
  const rows: readonly Row[] = file[list];
  return rows.filter((each) => isAlike(list, each, row)).length;
}

/** Whether a file has something in a bed or bin that was not in it before: then it tells of that, too. */
function holdsMore({ list, id }: { list: IdList; id: string }, found: GardenFile, now: GardenFile): boolean {
  return HELD_IN.filter(({ holder }) => holder === list).some(({ list: held, key }) => {
    const [before, rows]: [readonly Row[], readonly Row[]] = [found[held], now[held]];
    const said = new Set(before.filter((row) => row[key] === id).map(itselfOf));
    return rows.some((row) => row[key] === id && !said.has(itselfOf(row)));
  });
}

/** An item by its id, a row without one by what it says. */
function itselfOf(row: Row): string {
  return typeof row.id === 'string' ? row.id : inOneForm(row);
}

function rowIn(file: GardenFile, { list, id }: Extract<StoredEdit, { id: string }>): Row | undefined {
  const rows: readonly (Row & { id?: string | undefined })[] = file[list];
  return rows.find((row) => row.id === id);
}

function listIn(row: Row, key: string): readonly unknown[] {
  const list = row[key];
  return Array.isArray(list) ? list : [];
}

function isSame(a: unknown, b: unknown): boolean {
  return inOneForm(a) === inOneForm(b);
}
