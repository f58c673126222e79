/**
 * What cannot be in a garden without something else: it goes with it.
 */
import type { GardenFile } from './garden-file.ts';
import { withoutAbsent } from './without-absent.ts';

/** A list whose items others are in, came from, or were meant for. */
export type Holder = 'beds' | 'plantings' | 'bins' | 'piles';

/** Lists whose rows cannot be without what they are in, the key that names it, and the list it is in. */
export const HELD_IN = [
  { list: 'plantings', key: 'bed', holder: 'beds' },
  { list: 'coverStands', key: 'bed', holder: 'beds' },
  { list: 'mulches', key: 'bed', holder: 'beds' },
  { list: 'piles', key: 'bin', holder: 'bins' },
  { list: 'topdressed', key: 'bed', holder: 'beds' },
  { list: 'fed', key: 'bed', holder: 'beds' },
  { list: 'soilTests', key: 'bed', holder: 'beds' },
  { list: 'diseases', key: 'bed', holder: 'beds' },
] as const;

/** Whether an item of a list has gone. */
export type IsGone = (list: Holder, id: string) => boolean;

/**
 * A garden file without what is in a bed or bin that is gone. What only came from something gone, or was meant for it, stays
 * and no longer says so; whoever worked in some beds alone works in those that are left. Rows and lists that nothing is
 * taken from stay the very same.
 */
export function withoutOrphans(file: GardenFile, isGone: IsGone): GardenFile {
  const stays = (holder: Holder, id: unknown): boolean => typeof id !== 'string' || !isGone(holder, id);
  const lists = HELD_IN.map(({ list, key, holder }) => {
    const rows: readonly Readonly<Record<string, unknown>>[] = file[list];
    return [list, left(rows, (row) => stays(holder, row[key]))];
  });
  const kept: GardenFile = {
    ...file,
    ...Object.fromEntries(lists),
    ...(file.household === undefined ? {} : { household: withoutTheirBeds(file.household, isGone) }),
  };
  const wentAlong = (list: 'plantings' | 'piles', id: string): boolean => has(file[list], id) && !has(kept[list], id);
  return {
    ...kept,
    topdressed: changed(kept.topdressed, (row) =>
      withoutIn(row, 'piles', (id) => isGone('piles', id) || wentAlong('piles', id)),
    ),
    fed: changed(kept.fed, (row) => {
      const { planting = '', ...rest } = row;
      const went = planting !== '' && (isGone('plantings', planting) || wentAlong('plantings', planting));
      return went ? rest : row;
    }),
  };
}

type FileHousehold = NonNullable<GardenFile['household']>;

function withoutTheirBeds(household: FileHousehold, isGone: IsGone): FileHousehold {
  const { members } = household;
  if (members === undefined) return household;
  const now = changed(members, (row) => withoutIn(row, 'beds', (id) => isGone('beds', id)));
  return now === members ? household : { ...household, members: now };
}

/** A row without some words of one of its lists; without the list where none are left. */
function withoutIn<Key extends string, Row extends { [key in Key]?: string[] | undefined }>(
  row: Row,
  key: Key,
  isGone: (id: string) => boolean,
): Row {
  const words: readonly string[] = row[key] ?? [];
  const stay = words.filter((id) => !isGone(id));
  if (stay.length === words.length) return row;
  return withoutAbsent({ ...row, [key]: stay.length === 0 ? undefined : stay }) as Row;
}

function left<Row>(rows: readonly Row[], stays: (row: Row) => boolean): Row[] {
  const all = rows as Row[];
  return all.every(stays) ? all : all.filter(stays);
}

function changed<Row>(rows: readonly Row[], change: (row: Row) => Row): Row[] {
  const now = rows.map(change);
  return now.every((row, at) => row === rows[at]) ? (rows as Row[]) : now;
}

function has(rows: readonly { id?: string | undefined }[], id: string): boolean {
  return rows.some((row) => row.id === id);
}
