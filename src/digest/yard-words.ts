/**
 * What heaps of compost and the months of the yard are called.
 */
import type { Garden } from '../garden/garden.ts';
import { type Day, dayParts } from '../measures/days.ts';
import { dated, formatDay } from '../measures/quantity.ts';
import type { HeapSupply } from '../practices/compost-balance.ts';

/** What each heap is called: the bin its pile lies in, or the day it was bought. May hold marked days. */
export function heapNames({ piles, bins }: Pick<Garden, 'piles' | 'bins'>): (heap: HeapSupply) => string {
  return ({ what, of }) => {
    if (what === 'delivery') return `Compost that came on ${dated(of)}`;
    if (what === 'order') return `Compost ordered on ${dated(of)}`;
    const pile = piles.find(({ id }) => id === of);
    return bins.find(({ id }) => id === pile?.binId)?.name ?? of;
  };
}

/** "November 2026". */
export function monthName(day: Day): string {
  return `${formatDay(day, 'us').split(' ')[0]} ${dayParts(day).year}`;
}
