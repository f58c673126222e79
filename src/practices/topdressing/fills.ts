/**
 * New beds among those that want compost: they take what no layer goes without.
 */
import type { BedNeed } from './need.ts';
import { byTime } from './need.ts';
import type { Share } from './stock.ts';

/** Tries after which a new bed that still takes from a layer is given nothing. */
const MOST_TRIES = 12;
/** Litres by which a layer may come out smaller by rounding. */
const ROUNDING_LITRES = 0.5;

/**
 * Shares compost out to layers and new beds. A new bed takes its turn by its day, for a heap that is ready then may lie until
 * a newer one serves the layers after it; but it takes so much less as any layer would lose by it.
 *
 * @param share shares heaps out to needs in the order given
 */
export function withFills(
  share: (needs: readonly BedNeed[]) => Share[],
  layers: readonly BedNeed[],
  fills: readonly BedNeed[],
): Share[] {
  const alone = share(layers);
  if (fills.length === 0) return alone;
  let asked = fills;
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const shares = share([...layers, ...asked].sort(byTime));
    const lost = lostBy(alone, shares);
    if (lost < ROUNDING_LITRES) return shares.map((each) => asWanted(each, fills));
    asked = lessBy(asked, shares, lost);
  }
  return share([...layers, ...fills.map((fill) => ({ ...fill, litres: 0 }))]).map((each) => asWanted(each, fills));
}

/** What layers are given less than they would be without the new beds, litres. */
function lostBy(alone: readonly Share[], shares: readonly Share[]): number {
  const given = new Map(shares.map(({ key, fromBins }) => [key, fromBins]));
  return alone.reduce((sum, { key, fromBins }) => sum + Math.max(0, fromBins - (given.get(key) ?? 0)), 0);
}

/** The new beds asking for so much less, the last of them first. */
function lessBy(asked: readonly BedNeed[], shares: readonly Share[], litres: number): BedNeed[] {
  let left = Math.ceil(litres);
  const less = [...asked].reverse().map((fill) => {
    const taken = shares.find(({ key }) => key === fill.key)?.fromBins ?? 0;
    const gives = Math.min(taken, left);
    left -= gives;
    return { ...fill, litres: taken - gives };
  });
  return less.reverse();
}

/** A new bed's share beside all that it could take. */
function asWanted(share: Share, fills: readonly BedNeed[]): Share {
  const fill = fills.find(({ key }) => key === share.key);
  return fill === undefined ? share : { ...share, litres: fill.litres };
}
