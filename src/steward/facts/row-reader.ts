/**
 * Names and units that rows of a garden are told with.
 */
import type { RowReader } from '../../digest/row-words.ts';
import type { Garden } from '../../garden/garden.ts';

/** What tells the rows of a garden: an id that nothing is called by stays as it is. */
export function readerOf({ beds, bins, place: { units } }: Garden): RowReader {
  return {
    bedName: (id) => beds.find((bed) => bed.id === id)?.name ?? id,
    binName: (id) => bins.find((bin) => bin.id === id)?.name ?? id,
    units,
  };
}
