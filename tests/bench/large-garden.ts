/**
 * A garden many times as large, for seeing how costs grow.
 */
import type { Garden } from '../../src/garden/garden.ts';

/** The garden with all that is bound to a bed laid out again beside it. */
export function bedsTimes(garden: Garden, times: number): Garden {
  const copies = Array.from({ length: times }, (_, copy) => (copy === 0 ? '' : `-${copy}`));
  const laid = <Row>(rows: readonly Row[], named: (row: Row, copy: string) => Row): Row[] =>
    copies.flatMap((copy) => rows.map((row) => named(row, copy)));
  return {
    ...garden,
    beds: laid(garden.beds, (bed, copy) => ({ ...bed, id: bed.id + copy, name: bed.name + copy })),
    plantings: laid(garden.plantings, (row, copy) => ({ ...row, id: row.id + copy, bedId: row.bedId + copy })),
    stands: laid(garden.stands, (row, copy) => ({ ...row, id: row.id + copy, bedId: row.bedId + copy })),
    topdressed: laid(garden.topdressed, (row, copy) => ({ ...row, bedId: row.bedId + copy })),
  };
}
