/**
 * Kinds that are over soon after they are ripe, and are usually sown again for a longer harvest: the days between two
 * sowings. From memory, as is common practice.
 */
import { fromMemory, type Row } from './shapes/row.ts';

/** Days between two sowings of some crops. */
export interface SownAgain extends Row<'days'> {
  vegetableIds: readonly string[];
  days: { low: number; high: number };
}

const every = (low: number, high: number, ids: string): SownAgain => ({
  vegetableIds: ids.split(' '),
  days: { low, high },
  sources: [],
  marks: fromMemory('days'),
});

/** Every crop usually sown again in a season. */
export const sownAgain: readonly SownAgain[] = [
  every(7, 14, 'radish arugula'),
  every(10, 14, 'lettuce-leaf lettuce-head spinach mustard-greens cilantro'),
  every(14, 21, 'snap-bean beet sweet-corn pak-choi kohlrabi turnip dill pea'),
  every(21, 28, 'carrot green-onion'),
];

const byCrop: ReadonlyMap<string, SownAgain> = new Map(
  sownAgain.flatMap((row) => row.vegetableIds.map((id) => [id, row] as const)),
);

/** How often a crop is sown again; nothing for a kind that is sown once. */
export function sownAgainOf(cropId: string): SownAgain | undefined {
  return byCrop.get(cropId);
}
