/**
 * Kept edits laid over a garden file. What an edit is about and is not there any more changes nothing, and so does one that
 * would leave a row that cannot be read.
 */
import type { z } from 'zod';
import { type GardenFile, gardenFileSchema } from './garden-file.ts';
import { inOneForm } from './one-form.ts';
import { type Holder, withoutOrphans } from './orphans.ts';
import type { FieldChange, IdList, RowChange, RowList, StoredEdit } from './stored-edit.ts';

const { shape } = gardenFileSchema;

/** What a row of each list must look like. */
const ROWS: Readonly<Record<IdList | RowList, z.ZodType>> = {
  beds: shape.beds.element,
  plantings: shape.plantings.unwrap().element,
  coverStands: shape.coverStands.unwrap().element,
  bins: shape.bins.unwrap().element,
  piles: shape.piles.unwrap().element,
  mulches: shape.mulches.unwrap().element,
  topdressed: shape.topdressed.unwrap().element,
  fed: shape.fed.unwrap().element,
  compostBought: shape.compostBought.unwrap().element,
  away: shape.away.unwrap().element,
  gear: shape.gear.unwrap().element,
  seeds: shape.seeds.unwrap().element,
  wishes: shape.wishes.unwrap().element,
  soilTests: shape.soilTests.unwrap().element,
  soilSqueezes: shape.soilSqueezes.unwrap().element,
  diseases: shape.diseases.unwrap().element,
  coldNights: shape.coldNights.unwrap().element,
};

const PARTS = {
  garden: shape.garden,
  household: shape.household,
  climate: shape.climate,
  topdressing: shape.topdressing,
};

/** What a row without an id is known by, where something else of it was changed too. */
export const KNOWN_BY: Readonly<Record<RowList, readonly string[]>> = {
  mulches: ['bed', 'from'],
  topdressed: ['bed', 'on', 'material'],
  fed: ['bed', 'on', 'fertiliser'],
  compostBought: ['on'],
  away: ['from'],
  gear: ['what'],
  seeds: ['crop', 'cover', 'packed'],
  wishes: ['crop', 'year'],
  soilTests: ['on', 'bed'],
  soilSqueezes: ['on', 'soilTexture'],
  diseases: ['bed', 'crop', 'disease'],
  coldNights: ['evening', 'how'],
};

type Row = Readonly<Record<string, unknown>>;

/** A garden file with edits in it. Rows and lists that no edit changes stay the very same. */
export function mendedFile(file: GardenFile, edits: readonly StoredEdit[]): GardenFile {
  const now = edits.reduce(mendedBy, file);
  const ids: Record<Holder, ReadonlySet<string | undefined>> = {
    beds: new Set(now.beds.map(({ id }) => id)),
    plantings: new Set(now.plantings.map(({ id }) => id)),
    bins: new Set(now.bins.map(({ id }) => id)),
    piles: new Set(now.piles.map(({ id }) => id)),
  };
  return withoutOrphans(now, (list, id) => !ids[list].has(id));
}

/** A garden file with one edit in it; what hangs on something taken out stays. */
export function mendedBy(file: GardenFile, edit: StoredEdit): GardenFile {
  switch (edit.how) {
    case 'added': {
      const rows = rowsOf(file, edit.list);
      const row = readable(ROWS[edit.list], edit.row);
      return row === undefined || rows.some(({ id }) => id === edit.id)
        ? file
        : withRows(file, edit.list, [...rows, row]);
    }
    case 'gone': {
      const rows = rowsOf(file, edit.list).filter(({ id }) => id !== edit.id);
      const isLastBed = edit.list === 'beds' && rows.length === 0;
      return isLastBed || rows.length === rowsOf(file, edit.list).length ? file : withRows(file, edit.list, rows);
    }
    case 'changed': {
      const { list, id, fields, logs } = edit;
      return withRow(
        file,
        list,
        (row) => row.id === id,
        (row) => withLogs(withFields(row, fields), logs),
      );
    }
    case 'row':
      return withRowChange(file, edit);
    case 'part-changed': {
      const part = readable(PARTS[edit.part], withFields({ ...file[edit.part] }, edit.fields));
      return part === undefined ? file : { ...file, [edit.part]: part };
    }
    case 'part-replaced': {
      const { [edit.part]: _was, ...others } = file;
      if (edit.row === undefined) return edit.part === 'topdressing' ? (others as GardenFile) : file;
      const part = readable(PARTS[edit.part], edit.row);
      return part === undefined ? file : { ...file, [edit.part]: part };
    }
    case 'days':
    case 'days-gone':
      return file;
    default:
      return edit satisfies never;
  }
}

/** A row with some of its values given anew or no longer given. What was corrected and is told no longer stays untold. */
function withFields(row: Row, all: readonly FieldChange[]): Row {
  const fields = all.filter(({ key, was }) => was === undefined || row[key] !== undefined);
  const keys = new Set(fields.map(({ key }) => key));
  const given = fields.filter(({ is }) => is !== undefined).map(({ key, is }) => [key, is]);
  return Object.fromEntries([...Object.entries(row).filter(([key]) => !keys.has(key)), ...given]);
}

function withLogs(row: Row, logs: readonly { key: string; rows: readonly RowChange[] }[]): Row {
  const changed = logs.map(({ key, rows }) => {
    const log = row[key];
    return [key, rows.reduce(withLogRow, Array.isArray(log) ? (log as unknown[]) : [])];
  });
  return { ...row, ...Object.fromEntries(changed) };
}

function withLogRow(log: readonly unknown[], { was, row }: RowChange): readonly unknown[] {
  if (was === undefined) return [...log, row];
  const form = inOneForm(was);
  const at = log.findIndex((each) => inOneForm(each) === form);
  return log.flatMap((each, index) => (index === at ? (row ?? []) : [each]));
}

function withRowChange(file: GardenFile, { list, was, row }: Extract<StoredEdit, { how: 'row' }>): GardenFile {
  if (was === undefined) {
    const added = row && readable(ROWS[list], row);
    return added === undefined ? file : withRows(file, list, [...rowsOf(file, list), added]);
  }
  const rows = rowsOf(file, list);
  const form = inOneForm(was);
  const exact = rows.find((each) => inOneForm(each) === form);
  const alike = rows.filter((each) => isAlike(list, each, was));
  const it = exact ?? (alike.length === 1 ? alike[0] : undefined);
  if (it === undefined) return file;
  if (row === undefined) return withRows(file, list, without(rows, it));
  const fields = [...new Set([...Object.keys(was), ...Object.keys(row)])]
    .filter((key) => inOneForm(was[key]) !== inOneForm(row[key]))
    .map((key) => ({ key, is: row[key] }));
  return withRow(
    file,
    list,
    (each) => each === it,
    (each) => withFields(each, fields),
  );
}

/** Whether two rows of a list are known by the same, whatever else they say. */
export function isAlike(list: RowList, a: Row, b: Row): boolean {
  return KNOWN_BY[list].every((key) => a[key] === b[key]);
}

function without(rows: readonly Row[], it: Row): Row[] {
  const at = rows.indexOf(it);
  return rows.filter((_, index) => index !== at);
}

/** The file with a row of a list changed, where it can be read afterwards and is not as it was. */
function withRow(
  file: GardenFile,
  list: IdList | RowList,
  isIt: (row: Row) => boolean,
  change: (row: Row) => Row,
): GardenFile {
  const rows = rowsOf(file, list);
  const at = rows.findIndex(isIt);
  const was = rows[at];
  const now = was && readable(ROWS[list], change(was));
  if (was === undefined || now === undefined || inOneForm(now) === inOneForm(was)) return file;
  return withRows(
    file,
    list,
    rows.map((row, index) => (index === at ? now : row)),
  );
}

function readable(schema: z.ZodType, row: Row): Row | undefined {
  const parsed = schema.safeParse(row);
  return parsed.success ? (parsed.data as Row) : undefined;
}

function withRows(file: GardenFile, list: IdList | RowList, rows: readonly Row[]): GardenFile {
  return { ...file, [list]: rows };
}

function rowsOf(file: GardenFile, list: IdList | RowList): readonly Row[] {
  return file[list];
}
