/**
 * What is told of one bed, out of what is told of all: each list is parted by beds once, so that a garden of many beds is not
 * gone through from end to end for every bed of it.
 */

/** What is bound to a bed, or may be. */
interface Bound {
  bedId?: string | undefined;
}

const parted = new WeakMap<readonly Bound[], ReadonlyMap<string | undefined, readonly Bound[]>>();

/** The rows of a list that are bound to a bed, in the order of the list. The list must never change. */
export function inBed<Row extends Bound>(rows: readonly Row[], bedId: string): readonly Row[] {
  const known = parted.get(rows) ?? byBed(rows);
  parted.set(rows, known);
  return (known.get(bedId) ?? []) as readonly Row[];
}

function byBed(rows: readonly Bound[]): Map<string | undefined, Bound[]> {
  const beds = new Map<string | undefined, Bound[]>();
  for (const row of rows) {
    const there = beds.get(row.bedId);
    if (there === undefined) beds.set(row.bedId, [row]);
    else there.push(row);
  }
  return beds;
}
