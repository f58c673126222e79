/**
 * Changes of every kind to a garden's file, as a form could tell them; some of them are refused.
 */
import fc from 'fast-check';
import type { Edit } from '../../src/garden/edit.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { ID_LISTS, type IdList, ROW_LISTS, type RowList } from '../../src/garden/stored-edit.ts';
import { addDays, isDay } from '../../src/measures/days.ts';

type Row = Record<string, unknown>;

/** What is drawn for one edit, whatever the garden: which list, which row, what is done, and by how much. */
export const anyDrawn = fc.record({
  list: fc.constantFrom(...ID_LISTS, ...ROW_LISTS, 'garden', 'climate', 'topdressing', 'household'),
  row: fc.nat(9),
  act: fc.constantFrom('change', 'change', 'change', 'add', 'take out'),
  key: fc.nat(9),
  by: fc.integer({ min: -20, max: 20 }),
});

/** What was drawn. */
export type Drawn = typeof anyDrawn extends fc.Arbitrary<infer D> ? D : never;

/** The edit that was drawn, made to a file; nothing where its list is empty. */
export function editOf(file: GardenFile, { list, row: at, act, key, by }: Drawn): Edit | undefined {
  if (list === 'garden') return { part: list, row: changed(file.garden, ['hoursPerWeek', 'frostOffsetDays'], key, by) };
  if (list === 'climate') return { part: list, row: by > 0 ? { nearest: true } : frostDates };
  if (list === 'topdressing') return { part: list, row: by > 0 ? { depthMm: by, season: 'autumn' } : undefined };
  if (list === 'household') return { part: list, row: by > 0 ? { people: by } : undefined };
  const rows: readonly Row[] = file[list as IdList | RowList];
  const row = rows[at % Math.max(1, rows.length)];
  if (row === undefined) return undefined;
  const { id, ...words } = row;
  const own = typeof id === 'string' ? { list: list as IdList, id } : { list: list as RowList, was: row };
  if (act === 'take out') return own;
  if (act === 'add')
    return { list: list as IdList, row: { ...words, ...(row.name ? { name: `${row.name} ${by}` } : {}) } };
  return { ...own, row: changed(row, Object.keys(row), key, by) };
}

const frostDates = { frostDates: { lastSpring: '05-01', firstAutumn: '10-10' } };

/** A row with one of its values moved: a day, a figure, a yes or no; of a log a row is taken out or moved. */
function changed(row: object, keys: readonly string[], at: number, by: number): object {
  const key = keys[at % keys.length] ?? '';
  const value: unknown = Reflect.get(row, key);
  if (Array.isArray(value))
    return { ...row, [key]: by % 2 === 0 ? value.slice(1) : value.map((each) => moved(each, by)) };
  return key === 'id' || key === 'again' ? row : { ...row, [key]: moved(value, by) };
}

function moved(value: unknown, by: number): unknown {
  if (typeof value === 'string' && isDay(value)) return addDays(value, by);
  if (typeof value === 'number') return Number.isInteger(value) ? Math.abs(value + by) || 1 : value * 1.5;
  if (typeof value === 'boolean') return !value;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, moved(each, by)]));
}
