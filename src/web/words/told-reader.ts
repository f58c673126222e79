/**
 * For whom an entry of the ledger is told: the garden's own names for what it is about, and how amounts and days are read.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';

/** What a fact is told of: the garden, as far as its names and its place go. */
export type ToldGarden = Pick<Garden, 'beds' | 'stands' | 'piles' | 'bins' | 'place'>;

export interface ToldReader {
  units: UnitSystem;
  latitude: number;
  /** A day the reader has in mind: days of another year are written with their year. */
  beside: Day;
  day: (day: Day) => string;
  bedName: (bedId: string) => string;
  binName: (binId: string) => string;
  /** The bed a cover stands in. */
  standBed: (standId: string) => string;
  /** The bin a pile lies in. */
  pileBin: (pileId: string) => string;
}

/** A reader of a garden's ledger. What is no longer there goes by its id. */
export function toldReader({ beds, stands, piles, bins, place }: ToldGarden, beside: Day): ToldReader {
  const { units, latitude } = place;
  const bedName = (bedId: string): string => beds.find(({ id }) => id === bedId)?.name ?? bedId;
  const binName = (binId: string): string => bins.find(({ id }) => id === binId)?.name ?? binId;
  return {
    units,
    latitude,
    beside,
    day: (day) => formatDay(day, units, beside),
    bedName,
    binName,
    standBed: (standId) => bedName(stands.find(({ id }) => id === standId)?.bedId ?? standId),
    pileBin: (pileId) => {
      const binId = piles.find(({ id }) => id === pileId)?.binId;
      return bins.find(({ id }) => id === binId)?.name ?? pileId;
    },
  };
}
