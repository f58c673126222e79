/**
 * A season that goes hardly short: its layers are spread a touch thinner, and nothing is ordered for so little.
 */
import type { PracticeInput } from '../practice.ts';
import type { BedNeed } from './need.ts';
import type { Shortage } from './shortage.ts';
import { BAG_LITRES } from './ways-out.ts';

/** Share of its layer that a bed may do without before it is worth an order: a tenth, 2 mm of 20. House default. */
const HARDLY_SHARE = 0.1;

/** Whether a shortage is not worth an order: no more than a tenth of what is wanted, and less than a bag. */
export function isHardlyShort({ garden }: PracticeInput, { need, lacking }: Shortage): boolean {
  return lacking <= HARDLY_SHARE * need && lacking < BAG_LITRES[garden.place.units];
}

/** The needs with every layer of the seasons that go hardly short made thinner alike, so that there is enough for all. */
export function touchThinner(needs: readonly BedNeed[], hardly: readonly Shortage[]): BedNeed[] {
  return needs.map((each) => {
    const shortage = hardly.find(({ season }) => season === each.season);
    if (shortage === undefined || each.skipped) return each;
    const { need, lacking } = shortage;
    const litres = Math.max(1, Math.floor((each.litres * (need - lacking)) / need));
    const percent = Math.floor((100 * (need - lacking)) / need);
    return { ...each, litres, thinner: { fullLitres: each.litres, lacking: Math.ceil(lacking), percent } };
  });
}
