/**
 * The rules of a rotation, each by its name. No hard one may break; of the others each has a weight, and the plan that
 * breaks the least weight is the best.
 *
 * That legumes go ahead of hungry crops, and that covers and crops of one family keep apart, is told by sources; how much
 * each counts against the others is not. Every weight is a house default.
 */

/** Rules that may not break. */
export const HARD_RULES = [
  'rotation-plan.returns',
  'rotation-plan.disease',
  'rotation-plan.lasting',
  'rotation-plan.settled',
  'rotation-plan.area',
  'rotation-plan.still-stands',
  'rotation-plan.too-late',
] as const;

/** Rules that may break, and what each break counts. House defaults. */
export const WEIGHTS = {
  /** A cover of the same family stands straight ahead of the crop. */
  'rotation-plan.cover-kin': 6,
  /** A crop lies in more beds than it needs. */
  'rotation-plan.split': 5,
  /** A hungry crop with no legume, and no time for a legume cover, ahead of it. */
  'rotation-plan.legume-first': 4,
  /** Okra in the year before or after the nightshades: both carry verticillium wilt (veg:V64). */
  'rotation-plan.wilt-neighbours': 3,
  /** A family lies in more beds than it needs: it stays together, so that other beds rest from it. */
  'rotation-plan.family-apart': 2,
  /** The long end of a family's published interval is not kept. */
  'rotation-plan.longest-wait': 1,
} as const;

/** Name of a rule that may not break. */
export type HardRule = (typeof HARD_RULES)[number];
/** Name of a rule that may. */
export type SoftRule = keyof typeof WEIGHTS;

/** What a crop counts in a bed whose past is not known far enough back: it breaks no rule. House default. */
export const UNKNOWN_PAST = 0.5;

/** What a wish that is not met at all counts, and each bed it needs: more than all a bed could break. House default. */
export const UNMET = { wish: 60, bed: 20 } as const;

/** Share of a wished area from which it counts as met: a bed a little smaller than asked for is the bed. House default. */
export const MET_SHARE = 0.9;

/** The smallest piece of a bed that is given to a crop, m². House default. */
export const LEAST_PIECE_M2 = 0.5;
