/** How a bibliography page is written: citations by id, grouped by how much of each was read. */
import type { Source, SourceId } from '../shapes/row.ts';

/** Citations by the id without its prefix. */
type Citations = Readonly<Record<string, string>>;

/** The entries of one table's book list, each id with the table's prefix before it. */
export function entries(prefix: string, byReading: Readonly<Partial<Record<Source['read'], Citations>>>): Source[] {
  return Object.entries(byReading).flatMap(([read, citations]) =>
    Object.entries(citations).map(([id, citation]) => ({
      id: `${prefix}:${id}` as SourceId,
      citation,
      read: read as Source['read'],
    })),
  );
}
