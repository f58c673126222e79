/**
 * What a steward works out of a garden for somebody who looks at it. Nothing of it is kept with the garden.
 */
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import type { Garden } from '../../garden/garden.ts';
import type { BedGaps } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { CropChoice } from '../bed-plan/crop-choices.ts';
import type { SeasonEnd } from '../crew/look.ts';

/** A garden as it is shown: the same object until a fact or the day changes. */
export interface Shown {
  garden: Garden;
  plan: Plan;
}

/** Looks at what is shown; the same look at the same object is worked out once. */
export interface LookDoings {
  /** What could lie in the gaps of every bed, in the order of the garden, and the seed to buy for what is planned. */
  seasonEnd(shown: Shown): Promise<SeasonEnd>;
  /** What could lie in the gaps of a bed of the garden. */
  bedGaps(shown: Shown, bedId: string): Promise<BedGaps>;
  /** The nitrogen ledgers of every bed, told. */
  fertility(shown: Shown): Promise<LedgerTold[]>;
  /** The crops that could be chosen for a bed and season, with what is only planned there out of the way. */
  cropChoices(shown: Shown, spot: { bedId: string; season: number }): Promise<CropChoice[]>;
}
