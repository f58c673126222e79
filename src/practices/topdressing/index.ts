/**
 * Topdressing: a yearly layer of compost on every bed, shared out of what the bins will give, the shortfall named in
 * time to do something about it.
 */
import type { TaskDraft } from '../draft.ts';
import type { Practice } from '../practice.ts';
import { bedNeeds } from './need.ts';
import { orderDrafts } from './order-draft.ts';
import { topdressSentences } from './sentences.ts';
import { spreadDraft } from './spread-draft.ts';
import { shareOut } from './stock.ts';

/** The topdressing practice. */
export const topdressing: Practice = {
  name: 'topdressing',
  work(input, found) {
    const shares = shareOut(input.garden, found.compostSupply, bedNeeds(input, found));
    const drafts: TaskDraft[] = shares.map((share) => spreadDraft(input, share));
    return { drafts: [...drafts, ...orderDrafts(input, shares)] };
  },
  sentences: topdressSentences,
};
