/**
 * New beds: a bed that is still to be made is marked out and covered, its mix ordered, and filled, before the first crop
 * or cover goes in.
 */
import { bedFillings, fillOf } from '../fill-window.ts';
import type { Practice } from '../practice.ts';
import { fillDraft } from './fill-draft.ts';
import { markOutDraft } from './mark-out-draft.ts';
import { mixOrderDraft } from './mix-order-draft.ts';
import { newBedSentences } from './sentences.ts';

/** The new-beds practice. */
export const newBeds: Practice = {
  name: 'new-beds',
  work: (input, found) => ({
    drafts: bedFillings(input).flatMap((planned) => {
      const demand = found.compostBalance?.beds.find((bed) => bed.key === planned.key);
      const drawn = demand?.drawn ?? [];
      const fill = fillOf(planned, demand?.given ?? 0);
      const filling = demand === undefined ? planned : { ...planned, window: demand.window };
      const order = mixOrderDraft(input, filling, fill);
      return [
        markOutDraft(input, filling),
        ...(order === undefined ? [] : [order]),
        fillDraft(input, { filling, fill, order, drawn }),
      ];
    }),
  }),
  sentences: newBedSentences,
};
