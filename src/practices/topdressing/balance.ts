/**
 * What the beds want against what there is and will be, gathered for whoever shows it.
 */

import { areaOf } from '../bed-timeline.ts';
import type { CompostBalance, HeapSupply } from '../compost-balance.ts';
import { bedLayer } from '../compost-layer.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import type { BoughtHeap } from './bought.ts';
import type { Unserved } from './in-hand.ts';
import { closedBefore } from './need.ts';
import type { Shortage } from './shortage.ts';
import { type Heap, type Share, stockOnHand } from './stock.ts';
import { waysOut } from './ways-out.ts';

/** The balance of a garden's compost. */
export function balanceOf(
  input: PracticeInput,
  found: Findings,
  {
    shares,
    shortages,
    bought,
    unserved,
  }: {
    shares: readonly Share[];
    shortages: readonly Shortage[];
    bought: readonly BoughtHeap[];
    unserved: readonly Unserved[];
  },
): CompostBalance {
  return {
    beds: shares.map(({ key, bed, season, half, window, layer, litres, thinner, fromBins, drawn, skipped, fill }) => ({
      key,
      bedId: bed.id,
      bedName: bed.name,
      season,
      half,
      window,
      areaM2: areaOf(bed),
      layer,
      litres,
      ...(thinner === undefined ? {} : { thinner }),
      ...(fill === undefined ? {} : { fill }),
      given: fromBins,
      drawn: drawn.map(({ heap, litres: taken }) => ({
        ready: heap.ready,
        litres: taken,
        ...(heap.from.what === 'pile' ? { pileId: heap.from.of } : {}),
      })),
      skipped,
    })),
    spared: input.garden.beds.flatMap(({ id, name }) => {
      const { by, phosphorusPpm } = bedLayer(input.garden, id);
      return by === 'phosphorus' && phosphorusPpm !== undefined ? [{ bedName: name, phosphorusPpm }] : [];
    }),
    unserved: [
      ...closedBefore(input, found),
      ...unserved.map(({ need: { bed, season, window }, comes }) => ({
        bedName: bed.name,
        season,
        closes: window.latest,
        comes,
      })),
    ],
    heaps: stockOnHand(input.garden, { made: found.compostSupply, bought }).filter(isLeft).map(supplyOf),
    shortfalls: shortages.map((shortage) => ({
      season: shortage.season,
      litres: shortage.litres,
      by: shortage.day,
      order: shortage.order,
      waysOut: waysOut(input, found, shortage),
    })),
  };
}

function isLeft({ litres }: Heap): boolean {
  return litres > 0;
}

function supplyOf({ ready, litres, unproven, from }: Heap): HeapSupply {
  return { ...from, ready, litres, proven: unproven === undefined };
}
