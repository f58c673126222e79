/**
 * Topdressing: a yearly layer of compost on every bed, shared out of what the bins will give, the shortfall named in
 * time to do something about it.
 */
import type { TaskDraft } from '../draft.ts';
import { clashesWherever } from '../manure-spreads.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { balanceOf } from './balance.ts';
import { beginDraft } from './begin-draft.ts';
import { type BoughtHeap, boughtHeaps } from './bought.ts';
import { withFills } from './fills.ts';
import { layersInHand } from './in-hand.ts';
import { manureSentences } from './manure-sentences.ts';
import { type BedNeed, bedNeeds, fillNeeds } from './need.ts';
import { orderDrafts } from './order-draft.ts';
import { topdressSentences } from './sentences.ts';
import { type Shortage, shortagesOf } from './shortage.ts';
import { spreadDraft } from './spread-draft.ts';
import { openedAt, type Share, type Stock, shareOut } from './stock.ts';
import { testDrafts } from './test-draft.ts';
import { isHardlyShort, touchThinner } from './touch-thinner.ts';

/** The topdressing practice. */
export const topdressing: Practice = {
  name: 'topdressing',
  work(input, found) {
    const bought = boughtHeaps(input.garden, input.climate);
    const stock = { made: found.compostSupply, bought, avoids: avoiding(input) };
    const { layers: inHand, unserved } = layersInHand(input, found, stock, bedNeeds(input, found));
    const { shares, shortages } = sharedOut(input, stock, { layers: inHand, fills: fillNeeds(input) });
    const orders = orderDrafts(input, found, shortages);
    const layers = shares.filter(({ fill }) => fill === undefined);
    const drafts: TaskDraft[] = layers.map((share) => spreadDraft(input, share, orders));
    const compostBalance = balanceOf(input, found, { shares, shortages, bought, unserved });
    return {
      found: { compostBalance },
      drafts: [
        ...drafts,
        ...shortages.flatMap((each) => beginDraft(input, found, each) ?? []),
        ...orders.map(({ draft }) => draft),
        ...testDrafts(input, bought),
      ],
    };
  },
  sentences: { ...topdressSentences, ...manureSentences },
};

/** Whether compost of a pile comes too close before a harvest of a bed; each pair worked out once. */
function avoiding(input: PracticeInput): NonNullable<Stock['avoids']> {
  const known = new Map<string, boolean>();
  return ({ key, bed, window }, { from, ready }) => {
    if (from.what !== 'pile') return false;
    const pair = `${key} ${from.of}`;
    const days = openedAt(window, ready);
    const avoids = known.get(pair) ?? clashesWherever(input, { key, bedId: bed.id, window: days, pileId: from.of });
    known.set(pair, avoids);
    return avoids;
  };
}

interface SharedOut {
  shares: Share[];
  shortages: Shortage[];
}

/**
 * The compost shared out. A season that goes hardly short is spread thinner, where that is enough for all its beds. New
 * beds take what no layer goes without, and are never short, for bed mix fills them as well.
 */
function sharedOut(
  input: PracticeInput,
  stock: Stock & { bought: readonly BoughtHeap[] },
  { layers: needs, fills }: { layers: readonly BedNeed[]; fills: readonly BedNeed[] },
): SharedOut {
  const shared = (of: readonly BedNeed[]): SharedOut => {
    const shares = withFills((all) => shareOut(input.garden, input.today, stock, all), of, fills);
    const layers = shares.filter(({ fill }) => fill === undefined);
    return { shares, shortages: shortagesOf(input, layers, stock.bought) };
  };
  const whole = shared(needs);
  const hardly = whole.shortages.filter((shortage) => isHardlyShort(input, shortage));
  if (hardly.length === 0) return whole;
  const tried = shared(touchThinner(needs, hardly)).shortages;
  return shared(
    touchThinner(
      needs,
      hardly.filter(({ season }) => tried.every((short) => short.season !== season)),
    ),
  );
}
