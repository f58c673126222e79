/**
 * Changing what a garden was told: an edit as a form tells it, in the rows of the garden file, and as the ledger keeps it.
 */
import type { Day } from '../measures/days.ts';
import type { GardenFile } from './garden-file.ts';
import { firstFree, slug } from './ids.ts';
import { countOf, inOneForm } from './one-form.ts';
import { HELD_IN, type IsGone, withoutOrphans } from './orphans.ts';
import { InputRefused, type Problem } from './problem.ts';
import {
  type FieldChange,
  ID_LISTS,
  type IdList,
  type RowChange,
  type RowList,
  type StoredEdit,
} from './stored-edit.ts';
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

/**
 * Edits as they are kept: what the checked file says otherwise than the file before them.
 *
 * @param refs where the edited rows stand in the checked file
 */
export function storedEdits(
  { before, edits, refs }: { before: GardenFile; edits: readonly Edit[]; refs: readonly EditRef[] },
  checked: GardenFile,
): StoredEdit[] {
  const stored = edits.flatMap((edit, at) => storedEdit(before, edit, checkedRow(checked, refs[at]), checked));
  const known = new Set(
    [...before.plantings.map(({ id }) => id)].concat(
      stored.flatMap((edit) => (edit.how === 'added' && edit.list === 'plantings' ? [edit.id] : [])),
    ),
  );
  const sownAgain = checked.plantings.filter(({ id }) => !known.has(id));
  return [...stored, ...sownAgain.map((row) => added('plantings', row))];
}

function checkedRow(checked: GardenFile, ref: EditRef | undefined): Row | undefined {
  return ref?.list === undefined || ref.at === undefined ? undefined : rowsOf({ ...checked }, ref.list)[ref.at];
}

function storedEdit(before: GardenFile, edit: Edit, row: Row | undefined, checked: GardenFile): StoredEdit[] {
  if ('days' in edit) return edit.days.length === 0 ? [] : [{ how: 'days', days: edit.days.map(plainDay) }];
  if ('daysGone' in edit) {
    const days = edit.daysGone.map(({ day, kind }) => ({ day, kind }));
    return days.length === 0 ? [] : [{ how: 'days-gone', days }];
  }
  if ('part' in edit) return storedPart(before, checked, edit.part);
  if (isOfIds(edit)) return storedItem(before, edit, row);
  const was = edit.was && rowsOf({ ...before }, edit.list).find((each) => inOneForm(each) === inOneForm(edit.was));
  if (inOneForm(was) === inOneForm(row)) return [];
  return [{ how: 'row', list: edit.list, ...withoutAbsent({ was: was && plain(was), row: row && plain(row) }) }];
}

function isOfIds(edit: Extract<Edit, { list: string }>): edit is Extract<Edit, { list: IdList }> {
  return ID_LISTS.some((list) => list === edit.list);
}

function storedItem(
  before: GardenFile,
  { list, id, row: told }: Extract<Edit, { list: IdList }>,
  row: Row | undefined,
): StoredEdit[] {
  if (id === undefined) return row === undefined ? [] : [added(list, row)];
  const was = rowsOf({ ...before }, list).find((each) => each.id === id);
  if (was === undefined) return [];
  if (told === undefined) return [{ how: 'gone', list, id, row: plain(was) }];
  if (row === undefined) return [];
  const keys = [...new Set([...Object.keys(was), ...Object.keys(row)])].filter(
    (key) => key !== 'id' && key !== 'again',
  );
  const logs = keys
    .filter(isLog)
    .map((key) => ({ key, rows: logChanges(listed(was[key]), listed(row[key])) }))
    .filter(({ rows }) => rows.length > 0);
  const fields = fieldChanges(
    was,
    row,
    keys.filter((key) => !isLog(key)),
  );
  return logs.length + fields.length === 0 ? [] : [{ how: 'changed', list, id, goesBy: nameIn(was), fields, logs }];
}

function added(list: IdList, { again: _again, ...row }: Row): StoredEdit {
  return { how: 'added', list, id: String(row.id), row: plain(row) };
}

function storedPart(before: GardenFile, checked: GardenFile, part: EditedPart): StoredEdit[] {
  const [was, is] = [plain(before[part] ?? {}), plain(checked[part] ?? {})];
  if (inOneForm(was) === inOneForm(is)) return [];
  if (part === 'climate' || part === 'topdressing') {
    const given = { ...(before[part] ? { was } : {}), ...(checked[part] ? { row: is } : {}) };
    return [{ how: 'part-replaced', part, ...given }];
  }
  const keys = [...new Set([...Object.keys(was), ...Object.keys(is)])];
  const fields = fieldChanges(
    was,
    is,
    keys.filter((key) => key !== 'id' && key !== 'members'),
  );
  return fields.length === 0 ? [] : [{ how: 'part-changed', part, fields }];
}

function fieldChanges(was: Row, is: Row, keys: readonly string[]): FieldChange[] {
  return keys
    .filter((key) => inOneForm(was[key]) !== inOneForm(is[key]))
    .map((key) => withoutAbsent({ key, was: was[key], is: is[key] }));
}

const LOGS = [
  'planned',
  'regrowthChecked',
  'regrowth',
  'seen',
  'looked',
  'resown',
  'seed',
  'ingredients',
  'readings',
  'turns',
  'notReady',
];

function isLog(key: string): boolean {
  return LOGS.includes(key);
}

/** The rows that changed. In lists of one length a row that changed in its place is one change, and no more than that. */
function logChanges(was: readonly unknown[], is: readonly unknown[]): RowChange[] {
  if (was.length === is.length) {
    return was.flatMap((row, at) => (inOneForm(row) === inOneForm(is[at]) ? [] : [{ was: row, row: is[at] }]));
  }
  return [...more(was, is).map((row) => ({ was: row })), ...more(is, was).map((row) => ({ row }))];
}

/** Rows of which there are more in one list than in another, each as often as that. */
function more(rows: readonly unknown[], than: readonly unknown[]): unknown[] {
  return rows.filter((row, at) => countOf(rows.slice(0, at + 1), row) > countOf(than, row));
}

const GOES_BY = ['name', 'bed', 'crop', 'cover', 'mix', 'bin', 'sow', 'setOut', 'built'];

function nameIn(row: Row): Record<string, unknown> {
  return withoutAbsent(Object.fromEntries(GOES_BY.map((key) => [key, row[key]])));
}

function plain(row: object): Record<string, unknown> {
  return withoutAbsent({ ...row });
}

function plainDay(day: LoggedDay): LoggedDay {
  return withoutAbsent(day);
}

function listed(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function rowsOf(data: Readonly<Record<string, unknown>>, list: string): readonly Row[] {
  return listed(data[list]) as readonly Row[];
}
