/**
 * Compost on hand and to come, shared out to the beds in the order they want it.
 */
import type { Garden } from '../../garden/garden.ts';
import { type Day, latestOf } from '../../measures/days.ts';
import type { TaskKey, Window } from '../draft.ts';
import { maturityKey } from '../keys.ts';
import type { CompostSupply } from '../practice.ts';
import type { BedNeed } from './need.ts';

/** One heap of compost, bought or made. */
interface Heap {
  ready: Day;
  litres: number;
  /** The look whether it is ready, while nobody has said so. */
  unproven?: TaskKey;
}

/** A bed's need with what the bins can give it. Its window opens once the compost it draws on is ready. */
export interface Share extends BedNeed {
  fromBins: number;
  /** The day by which all of that is ready; absent where it is nothing. */
  ready?: Day;
  /** The looks that must come first, for compost nobody has yet found ready. */
  unproven: readonly TaskKey[];
}

/**
 * Shares the household's compost out. Each heap counts from the day it is ready, less what was spread since; a bed
 * takes from the oldest heap that is ready by the end of its window. Nothing is given twice.
 */
export function shareOut(
  garden: Pick<Garden, 'topdressed' | 'compostBought'>,
  supply: readonly CompostSupply[],
  needs: readonly BedNeed[],
): Share[] {
  const heaps = heapsOf(garden, supply);
  const proven = heaps.filter(({ unproven }) => unproven === undefined);
  for (const { litres, on } of [...garden.topdressed].sort((a, b) => order(a.on, b.on))) take(proven, litres, on);
  return needs.map((need) => {
    const { litres, from } = need.skipped ? NOTHING : take(heaps, need.litres, need.window.latest);
    const ready = from
      .map((heap) => heap.ready)
      .sort()
      .at(-1);
    return {
      ...need,
      window: openedAt(need.window, ready),
      fromBins: litres,
      ...(ready === undefined ? {} : { ready }),
      unproven: from.flatMap(({ unproven }) => unproven ?? []),
    };
  });
}

/** A window that opens no earlier than the heaps drawn on are ready; each is before it closes. */
function openedAt({ earliest, preferred, latest }: Window, ready = earliest): Window {
  const opens = latestOf(earliest, ready);
  return { earliest: opens, preferred: latestOf(opens, preferred), latest };
}

const NOTHING: Taken = { litres: 0, from: [] };

function heapsOf({ compostBought }: Pick<Garden, 'compostBought'>, supply: readonly CompostSupply[]): Heap[] {
  const made = supply.map(
    ({ pileId, litres, ready, finished }): Heap =>
      finished ? { ready, litres } : { ready, litres, unproven: maturityKey(pileId) },
  );
  const bought = compostBought.map(({ on, litres }): Heap => ({ ready: on, litres }));
  return [...bought, ...made].sort(
    (a, b) => order(a.ready, b.ready) || order(a.unproven ?? '', b.unproven ?? '') || a.litres - b.litres,
  );
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

interface Taken {
  litres: number;
  from: readonly Heap[];
}

/** Takes up to so many litres from the heaps ready by a day, oldest first, and leaves them smaller by it. */
function take(heaps: Heap[], wanted: number, by: Day): Taken {
  const from: Heap[] = [];
  let left = wanted;
  for (const heap of heaps) {
    const litres = heap.ready <= by ? Math.min(left, heap.litres) : 0;
    if (litres <= 0) continue;
    heap.litres -= litres;
    left -= litres;
    from.push(heap);
  }
  return { litres: wanted - left, from };
}
