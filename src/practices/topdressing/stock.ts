/**
 * Compost on hand and to come, shared out to the beds in the order they want it.
 */
import type { Garden, Topdressed } from '../../garden/garden.ts';
import { clampDay, type Day, latestOf } from '../../measures/days.ts';
import type { TaskKey, Window } from '../draft.ts';
import { maturityKey } from '../keys.ts';
import type { CompostSupply } from '../practice.ts';
import type { BedNeed } from './need.ts';

/** One heap of compost, bought or made. */
export interface Heap {
  /** The day from which it may be spread. */
  ready: Day;
  litres: number;
  /** Whether it is a pile's, by its id, or bought, by its day. */
  from: { what: 'pile' | 'delivery' | 'order'; of: string };
  /** The look or test that must come first, while nobody has said how it went. */
  unproven?: TaskKey;
  /** For what was bought: the day from which it lies in the yard, tested or not. */
  here?: Day;
}

/** Litres taken from a heap. */
export interface Draw {
  heap: Heap;
  litres: number;
}

/** A bed's need with what the bins can give it. Its window opens once the compost it draws on is ready. */
export interface Share extends BedNeed {
  fromBins: number;
  /** The day by which all of that is ready; absent where it is nothing. */
  ready?: Day;
  /** The looks and tests that must come first, for compost nobody has yet found ready. */
  unproven: readonly TaskKey[];
  drawn: readonly Draw[];
}

/** Compost made and compost bought. */
export interface Stock {
  made: readonly CompostSupply[];
  bought: readonly Heap[];
  /** Whether a bed had better be given of another heap: a harvest comes too soon after the manure in this one. */
  avoids?: (need: BedNeed, heap: Heap) => boolean;
}

/** What is left of a finished pile when it counts as used up: half a bucket, the sweepings of its bin. House default. */
const SWEEPINGS_LITRES = 5;

/** The heaps there are and will be, oldest first, less what was spread of them; a finished pile used up is none. */
export function stockOnHand({ topdressed }: Pick<Garden, 'topdressed'>, stock: Stock): Heap[] {
  const heaps = heapsOf(stock);
  const layers = topdressed.filter(({ materialId }) => materialId === undefined);
  for (const layer of [...layers].sort((a, b) => order(a.on, b.on))) spread(heaps, layer);
  return heaps.filter(
    ({ from, unproven, litres }) => from.what !== 'pile' || unproven !== undefined || litres >= SWEEPINGS_LITRES,
  );
}

/**
 * Shares the household's compost out. Each heap counts from the day it is ready, less what was spread since; a bed
 * takes from the oldest heap that is ready by the end of its window, or by today where that is past. A heap some beds
 * had better not have goes to the others first, and to those last. Nothing is given twice.
 */
export function shareOut(
  garden: Pick<Garden, 'topdressed'>,
  today: Day,
  stock: Stock,
  needs: readonly BedNeed[],
): Share[] {
  const heaps = stockOnHand(garden, stock);
  const { avoids } = stock;
  // Asked of every heap once, not once for every bed.
  const avoided = new Set(heaps.filter((heap) => avoids !== undefined && needs.some((need) => avoids(need, heap))));
  return needs.map((need) => {
    const best = inOrderFor(need, heaps, avoided, avoids);
    const drawn = need.skipped ? [] : take(best, need.litres, latestOf(need.window.latest, today));
    const ready = drawn
      .map(({ heap }) => heap.ready)
      .sort()
      .at(-1);
    return {
      ...need,
      window: openedAt(need.window, ready),
      fromBins: sumOf(drawn),
      ...(ready === undefined ? {} : { ready }),
      unproven: [...new Set(drawn.flatMap(({ heap }) => heap.unproven ?? []))],
      drawn,
    };
  });
}

/** Heaps with those first that other beds had better not have, and those last that this one had better not. */
function inOrderFor(need: BedNeed, heaps: Heap[], avoided: ReadonlySet<Heap>, avoids: Stock['avoids']): Heap[] {
  if (avoids === undefined) return heaps;
  const rank = (heap: Heap): number => {
    if (avoids(need, heap)) return 2;
    return avoided.has(heap) ? 0 : 1;
  };
  return heaps
    .map((heap) => ({ heap, rank: rank(heap) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ heap }) => heap);
}

/**
 * Takes what was spread on a day off the piles it is told to have come from, then off what had been found ready by then,
 * and the rest off what had been bought and lay there untested: never off what was still to come.
 */
function spread(heaps: Heap[], { litres, on, pileIds = [] }: Topdressed): void {
  const told = heaps.filter(({ from }) => from.what === 'pile' && pileIds.includes(from.of));
  const toldOpen = told.filter(({ unproven }) => unproven !== undefined);
  const fromTold = litres - sumOf(take(toldOpen, litres));
  const proven = heaps.filter(({ unproven }) => unproven === undefined);
  const left = [told, proven].reduce((rest, some) => rest - sumOf(take(some, rest, on)), fromTold);
  const untested = heaps.filter(({ unproven, here }) => unproven !== undefined && here !== undefined && here <= on);
  take(untested, left);
}

function sumOf(drawn: readonly Draw[]): number {
  return drawn.reduce((sum, { litres }) => sum + litres, 0);
}

/** A window that opens no earlier than the heaps drawn on are ready. */
export function openedAt({ earliest, preferred, latest }: Window, ready = earliest): Window {
  const opens = clampDay(ready, earliest, latest);
  return { earliest: opens, preferred: latestOf(opens, preferred), latest };
}

function heapsOf({ made: piles, bought }: Stock): Heap[] {
  const made = piles.map(
    ({ pileId, litres, ready, finished }): Heap => ({
      ready,
      litres,
      from: { what: 'pile', of: pileId },
      ...(finished ? {} : { unproven: maturityKey(pileId) }),
    }),
  );
  return [...bought.map((heap) => ({ ...heap })), ...made].sort(
    (a, b) =>
      order(a.ready, b.ready) ||
      order(a.unproven ?? '', b.unproven ?? '') ||
      a.litres - b.litres ||
      order(a.from.of, b.from.of),
  );
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Takes up to so many litres from the heaps ready by a day, oldest first, and leaves them smaller by it. */
function take(heaps: Heap[], wanted: number, by?: Day): Draw[] {
  const drawn: Draw[] = [];
  let left = wanted;
  for (const heap of heaps) {
    const litres = by === undefined || heap.ready <= by ? Math.min(left, heap.litres) : 0;
    if (litres <= 0) continue;
    heap.litres -= litres;
    left -= litres;
    drawn.push({ heap, litres });
  }
  return drawn;
}
