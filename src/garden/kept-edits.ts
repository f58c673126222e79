/**
 * Edits as the ledger keeps them: what a checked file says otherwise than the file before it.
 */
import { type Edit, type EditedPart, type EditRef, isOfIds, rowsOf } from './edit.ts';
import type { GardenFile } from './garden-file.ts';
import { firstFree } from './ids.ts';
import { countOf, inOneForm } from './one-form.ts';
import { type FieldChange, ID_LISTS, type IdList, ROW_LISTS, type RowChange, type StoredEdit } from './stored-edit.ts';
import type { LoggedDay } from './weather.ts';
import { withoutAbsent } from './without-absent.ts';

type Row = Readonly<Record<string, unknown>>;

/**
 * Edits as they are kept: what the checked file says otherwise than the file before them.
 *
 * @param refs where the edited rows stand in the checked file
 * @param taken every id that was ever given: no later sowing is given one of them
 */
export function storedEdits({ before, edits, refs, taken }: Edited, checked: GardenFile): StoredEdit[] {
  const stored = edits.flatMap((edit, at) => storedEdit(before, edit, checkedRow(checked, refs[at]), checked));
  const known = new Set(
    [...before.plantings.map(({ id }) => id)].concat(
      stored.flatMap((edit) => (edit.how === 'added' && edit.list === 'plantings' ? [edit.id] : [])),
    ),
  );
  const given = new Set([...taken, ...checked.plantings.map(({ id }) => id ?? '')]);
  const sownAgain = checked.plantings
    .filter(({ id }) => !known.has(id))
    .map(({ id = '', ...row }) => {
      const own = taken.has(id) ? firstFree(id, given) : id;
      given.add(own);
      return { id: own, ...row };
    });
  return [...stored, ...sownAgain.map((row) => added('plantings', row))];
}

interface Edited {
  before: GardenFile;
  edits: readonly Edit[];
  refs: readonly EditRef[];
  taken: ReadonlySet<string>;
}

/**
 * All that one file says otherwise than another: items by their ids, rows without one by what they say. The members of the
 * household are left out.
 */
export function editsBetween(before: GardenFile, after: GardenFile): StoredEdit[] {
  const items = ID_LISTS.flatMap((list) => {
    const [was, is] = [rowsOf({ ...before }, list), rowsOf({ ...after }, list)];
    const left = was.flatMap((row) =>
      itemBetween(
        list,
        row,
        is.find(({ id }) => id === row.id),
      ),
    );
    const come = is.filter(({ id }) => !was.some((row) => row.id === id));
    return [...left, ...come.map((row) => added(list, row))];
  });
  const rows = ROW_LISTS.flatMap((list) =>
    logChanges(rowsOf({ ...before }, list), rowsOf({ ...after }, list)).map(
      (change) => ({ how: 'row', list, ...change }) as StoredEdit,
    ),
  );
  const parts = (['garden', 'climate', 'topdressing', 'household'] as const).flatMap((part) =>
    storedPart(before, after, part),
  );
  return [...parts, ...items, ...rows];
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

function storedItem(
  before: GardenFile,
  { list, id, row: told }: Extract<Edit, { list: IdList }>,
  row: Row | undefined,
): StoredEdit[] {
  if (id === undefined) return row === undefined ? [] : [added(list, row)];
  const was = rowsOf({ ...before }, list).find((each) => each.id === id);
  if (was === undefined) return [];
  if (told === undefined) return itemBetween(list, was, undefined);
  return row === undefined ? [] : itemBetween(list, was, row);
}

function itemBetween(list: IdList, was: Row, row: Row | undefined): StoredEdit[] {
  const id = String(was.id);
  if (row === undefined) return [{ how: 'gone', list, id, row: plain(was) }];
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
