/**
 * Rows of the garden file as addresses and edits name them.
 */
import { createHash } from 'node:crypto';
import type { Edit, EditedPart } from '../../../garden/edit.ts';
import type { GardenFile } from '../../../garden/garden-file.ts';
import { inOneForm } from '../../../garden/one-form.ts';
import { ID_LISTS, type IdList } from '../../../garden/stored-edit.ts';
import type { EditKind } from './kind.ts';

/** Parts of the file that are one row each. */
const PARTS: readonly EditedPart[] = ['garden', 'climate', 'topdressing', 'household'];

/** The ref of the one row that a part of the file is. */
export const THE_ONE = 'it';

/** The one text of what a row says: a list with nothing in it is as one that is not there. */
export function saidBy(row: object | undefined): string {
  return inOneForm(row && Object.fromEntries(Object.entries(row).filter(([, held]) => !isEmptyList(held))));
}

function isEmptyList(held: unknown): boolean {
  return Array.isArray(held) && held.length === 0;
}

/** How an address names a row: by its id, or by a short hash of what it says. */
export function refOf({ of }: Pick<EditKind, 'of'>, row: object): string {
  if (isPart(of)) return THE_ONE;
  const id: unknown = Reflect.get(row, 'id');
  if (typeof id === 'string' && isWithIds(of)) return id;
  return markOf(row).slice(0, 12);
}

/** A short mark of what a row says: another one where it says something else. */
export function markOf(row: object): string {
  return createHash('sha256').update(saidBy(row)).digest('hex').slice(0, 32);
}

/** The rows of a kind, in the order of the file. */
export function rowsOf({ of }: Pick<EditKind, 'of'>, file: GardenFile): readonly object[] {
  const held = file[of];
  return held === undefined ? [] : Array.isArray(held) ? held : [held];
}

/** The row an address names; nothing where there is none such, or none any more. */
export function rowAt(kind: Pick<EditKind, 'of'>, file: GardenFile, ref: string): object | undefined {
  return rowsOf(kind, file).find((row) => refOf(kind, row) === ref);
}

/** The edit that adds a row (no `was`), takes one out (no `row`) or changes one. */
export function editOf({ of }: Pick<EditKind, 'of'>, was: object | undefined, row: object | undefined): Edit {
  const told = row === undefined ? {} : { row };
  if (isPart(of)) return { part: of, ...told };
  if (!isWithIds(of)) return { list: of, ...(was === undefined ? {} : { was }), ...told };
  const id: unknown = was && Reflect.get(was, 'id');
  return { list: of, ...(typeof id === 'string' ? { id } : {}), ...told };
}

/** The ref of a part that is told already: it is changed, and never told beside itself. */
export function refOfPart({ of }: Pick<EditKind, 'of'>, file: GardenFile): string | undefined {
  return isPart(of) && file[of] !== undefined ? THE_ONE : undefined;
}

function isPart(of: keyof GardenFile): of is EditedPart {
  return PARTS.some((part) => part === of);
}

function isWithIds(of: keyof GardenFile): of is IdList {
  return ID_LISTS.some((list) => list === of);
}
