/**
 * Topdressing: a yearly layer of compost on every bed, shared out of what the bins will give, the shortfall named in
 * time to do something about it.
 */
import type { TaskDraft } from '../draft.ts';
import type { Practice } from '../practice.ts';
import { boughtHeaps } from './bought.ts';
import { bedNeeds } from './need.ts';
import { orderDrafts } from './order-draft.ts';
import { topdressSentences } from './sentences.ts';
import { spreadDraft } from './spread-draft.ts';
import { shareOut } from './stock.ts';
import { testDrafts } from './test-draft.ts';

/** The topdressing practice. */
export const topdressing: Practice = {
  name: 'topdressing',
  work(input, found) {
    const bought = boughtHeaps(input.garden, input.climate);
    const stock = { made: found.compostSupply, bought };
    const shares = shareOut(input.garden, input.today, stock, bedNeeds(input, found));
    const orders = orderDrafts(input, shares, bought);
    const drafts: TaskDraft[] = shares.map((share) => spreadDraft(input, share, orders));
    return { drafts: [...drafts, ...orders.map(({ draft }) => draft), ...testDrafts(input, bought)] };
  },
  sentences: topdressSentences,
};
