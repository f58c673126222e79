/**
 * Changing what a garden was told: an edit as a form tells it, in the rows of the garden file, and as the ledger keeps it.
 */
import type { Day } from '../measures/days.ts';
import type { GardenFile } from './garden-file.ts';
import { firstFree, slug } from './ids.ts';
import { inOneForm } from './one-form.ts';
import { HELD_IN, type IsGone, withoutOrphans } from './orphans.ts';
import { InputRefused, type Problem } from './problem.ts';
import { ID_LISTS, type IdList, type RowList } from './stored-edit.ts';
import type { LoggedDay } from './weather.ts';
import { withoutAbsent } from './without-absent.ts';

/** A part of the garden file that is no list. */
export type EditedPart = 'garden' | 'climate' | 'topdressing' | 'household';

/**
 * One thing to change. Rows are those of the garden file, whole, logs included, their references ids. Members of the
 * household stay as they are, whatever a row of the household says: facts of their own change those.
 */
export type Edit =
  /** An item: added without `id`, taken out without `row`, changed to `row` with both. */
  | { list: IdList; id?: string | undefined; row?: object | undefined }
  /** A row without an id: added without `was`, taken out without `row`; `was` is the row as it stands in the file. */
  | { list: RowList; was?: object | undefined; row?: object | undefined }
  /** A part; without `row` it is taken out, where the file can be without it. */
  | { part: EditedPart; row?: object | undefined }
  /** Days of logged weather given anew, whole. */
  | { days: readonly LoggedDay[] }
  /** Days of logged weather taken out. */
  | { daysGone: readonly { day: Day; kind: LoggedDay['kind'] }[] };

/** Where an edited row stands in the edited file; `at` is its place in its list, absent for a part and for what is gone. */
export interface EditRef {
  list?: string;
  at?: number;
}

/** A garden file with edits in it, not checked yet. */
export interface EditedFile {
  file: Record<string, unknown>;
  /** One for each edit, in their order. */
  refs: readonly EditRef[];
  /** What goes with what is taken out, because it cannot be without it. */
  goneAlong: readonly { list: string; row: Row }[];
}

type Row = Readonly<Record<string, unknown>>;

/**
 * A garden file with edits in it, unchecked: what hangs on something taken out goes with it.
 *
 * @param everId ids that were given before: nothing new is given one of them
 * @throws {InputRefused} where an edit is about something that is not in the file
 */
export function editedFile(
  file: GardenFile,
  edits: readonly Edit[],
  everId: ReadonlySet<string> = new Set(),
): EditedFile {
  const taken = new Set([...everId, ...ID_LISTS.flatMap((list) => file[list].flatMap(({ id }) => id ?? []))]);
  const problems: Problem[] = [];
  const placed: { list?: string; row?: Row }[] = [];
  let data: Record<string, unknown> = { ...file };
  for (const edit of edits) {
    const done = editedBy(data, withNewId(edit, taken));
    if ('problem' in done) problems.push(done.problem);
    else {
      data = done.data;
      placed.push(done.placed);
    }
  }
  if (problems.length > 0) throw new InputRefused('It cannot be changed.', problems);
  const isGone: IsGone = (list, id) =>
    edits.some((edit) => 'id' in edit && edit.row === undefined && edit.list === list && edit.id === id);
  const left: Record<string, unknown> = withoutOrphans(data as GardenFile, isGone);
  const refs = placed.map(({ list, row }): EditRef => {
    const at = list === undefined || row === undefined ? -1 : rowsOf(left, list).indexOf(row);
    return { ...(list === undefined ? {} : { list }), ...(at < 0 ? {} : { at }) };
  });
  const goneAlong = HELD_IN.flatMap(({ list, key, holder }) =>
    rowsOf(data, list).flatMap((row) => (isGone(holder, String(row[key])) ? [{ list, row }] : [])),
  );
  return { file: left, refs, goneAlong };
}

/** An edit that adds an item, with an id for it: made from its own words, and never given before. */
function withNewId(edit: Edit, taken: Set<string>): Edit {
  if (!('list' in edit) || !isOfIds(edit) || edit.id !== undefined || edit.row === undefined) return edit;
  const row = edit.row as Row;
  if (row.id !== undefined) return edit;
  const id = firstFree(slug(wordsOf(edit.list, row)), taken);
  taken.add(id);
  return { ...edit, row: { ...row, id } };
}

function wordsOf(list: IdList, row: Row): string {
  const words = {
    beds: [row.name],
    bins: [row.name],
    plantings: [row.bed, row.crop, row.sow ?? row.setOut],
    coverStands: [row.bed, row.cover ?? row.mix, row.sow],
    piles: [row.bin, row.built],
  }[list];
  return words.join(' ');
}

type EditDone = { data: Record<string, unknown>; placed: { list?: string; row?: Row } } | { problem: Problem };

function editedBy(data: Record<string, unknown>, edit: Edit): EditDone {
  if ('part' in edit) return { data: withPart(data, edit), placed: { list: edit.part } };
  if (!('list' in edit)) return { data, placed: {} };
  const { list } = edit;
  const rows = rowsOf(data, list);
  const found = foundIn(rows, edit);
  const isNew = !('was' in edit && edit.was !== undefined) && !('id' in edit && edit.id !== undefined);
  if (!isNew && found < 0) return { problem: notThere(edit) };
  const id = 'id' in edit && edit.id !== undefined ? { id: edit.id } : {};
  const row: Row | undefined = edit.row && { ...(edit.row as Row), ...id };
  const next = isNew
    ? [...rows, ...(row === undefined ? [] : [row])]
    : rows.flatMap((each, at) => (at === found ? (row ?? []) : each));
  return { data: { ...data, [list]: next }, placed: { list, ...(row === undefined ? {} : { row }) } };
}

function foundIn(rows: readonly Row[], edit: Extract<Edit, { list: string }>): number {
  if ('id' in edit && edit.id !== undefined) return rows.findIndex(({ id }) => id === edit.id);
  if (!('was' in edit) || edit.was === undefined) return -1;
  const form = inOneForm(edit.was);
  return rows.findIndex((row) => inOneForm(row) === form);
}

function notThere(edit: Extract<Edit, { list: string }>): Problem {
  const called = 'id' in edit && edit.id !== undefined ? `"${edit.id}"` : 'what was to be changed';
  return {
    where: edit.list,
    what: `${called} is not there as it was any more.`,
    mend: 'Go back, look at what stands there now, and change that.',
  };
}

function withPart(data: Record<string, unknown>, { part, row }: Extract<Edit, { part: EditedPart }>) {
  const { [part]: was, ...others } = data;
  const held = (was ?? {}) as Row;
  if (part === 'garden') return { ...data, garden: { ...row, id: held.id } };
  if (part !== 'household') return row === undefined ? others : { ...data, [part]: row };
  const { members: _members, ...told } = { ...(row as Row | undefined) };
  const household = withoutAbsent({ ...told, members: held.members });
  return Object.keys(household).length === 0 ? others : { ...data, household };
}

/** Whether an edit is of an item that has an id. */
export function isOfIds(edit: Extract<Edit, { list: string }>): edit is Extract<Edit, { list: IdList }> {
  return ID_LISTS.some((list) => list === edit.list);
}

/** The rows of a list of a file that need not be right yet. */
export function rowsOf(data: Readonly<Record<string, unknown>>, list: string): readonly Row[] {
  return (Array.isArray(data[list]) ? data[list] : []) as readonly Row[];
}
