/**
 * Raw manure and the harvest: which piles count as raw, and how long a crop is kept from the kitchen after it.
 *
 * The wait is a published one, for manure worked into the soil on certified farms. It is a label, never a promise that
 * food is safe, and local rules come before it.
 */
import type { Garden, Pile } from '../garden/garden.ts';
import { feedstockById } from '../handbook/feedstocks.ts';
import { clearOfSoilById } from '../handbook/soil-contact.ts';
import { addDays, type Day } from '../measures/days.ts';
import { hotRecord } from './composting/hot-record.ts';

/** Days raw manure is kept from a harvest: where the crop touches soil, and elsewhere (7 CFR 205.203(c), compost:S23). */
export const MANURE_DAYS = { touching: 120, clear: 90 } as const;

/** What lies on a bed and counts as raw manure. */
export interface RawManure {
  /** The manures in it, in the middle of a sentence: "horse manure with bedding". */
  manure: string;
  /**
   * For compost, what its log shows toward a hot record, with why heat makes none of it where that is so; absent for
   * manure laid as it is.
   */
  record?: { days: number; turns: number; unfit?: string; isOpen: boolean };
}

/**
 * What makes a pile's compost count as raw: manure, and no logged hot record that all of it was heated.
 *
 * @returns nothing where it holds no manure or has its record; nor where nobody wrote down what it holds
 */
export function rawManureOf({ bins }: Pick<Garden, 'bins'>, pile: Pile): RawManure | undefined {
  const manure = manuresAmong(pile.ingredients.map(({ materialId }) => materialId));
  const bin = bins.find(({ id }) => id === pile.binId);
  const { days, turns, unfit, passed } = hotRecord(pile, bin);
  return manure === undefined || passed !== undefined
    ? undefined
    : {
        manure,
        record: { days, turns, ...(unfit === undefined ? {} : { unfit }), isOpen: pile.finishedOn === undefined },
      };
}

/** The manures among some feedstocks, in words; nothing where there is none. */
export function manuresAmong(materialIds: readonly string[]): string | undefined {
  const names = materialIds
    .map(feedstockById)
    .filter(({ manure }) => manure)
    .map(({ name }) => name.toLowerCase());
  return names.length === 0 ? undefined : [...new Set(names)].join(' and ');
}

/** Days from raw manure to the harvest of a crop: the longer wait unless its edible part is known to be clear of the soil. */
export function manureWaitDays(cropId: string): number {
  return clearOfSoilById(cropId) === undefined ? MANURE_DAYS.touching : MANURE_DAYS.clear;
}

/** The first day a crop may be harvested after raw manure was spread: not less than the wait lies between. */
export function harvestFrom(spreadOn: Day, cropId: string): Day {
  return addDays(spreadOn, manureWaitDays(cropId));
}

/** The last day raw manure may be spread before a harvest. */
export function spreadBy(harvestOn: Day, cropId: string): Day {
  return addDays(harvestOn, -manureWaitDays(cropId));
}
