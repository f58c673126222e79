/**
 * What covers and vegetables share: the groups they rotate by, and when they are sown by the freezes.
 */

/** Groups that share soil-borne trouble and so share a return interval. */
export type RotationGroup =
  | 'cabbage'
  | 'onion'
  | 'nightshade'
  | 'cucurbit'
  | 'legume'
  | 'carrot'
  | 'beet-spinach'
  | 'lettuce-daisy'
  | 'grass-corn'
  | 'mallow'
  | 'morning-glory'
  | 'mint-herb'
  | 'buckwheat'
  | 'borage'
  | 'perennial';

/** Sowing so many weeks before the median first autumn freeze (0 °C). */
export interface AutumnSowing {
  /** Weeks before the median first freeze of the first sowing day (the larger number). */
  earliestWeeks: number;
  /** Weeks before the median first freeze of the last sowing day (the smaller number, may be 0). */
  latestWeeks: number;
  /** Weeks before the median first freeze where the preferred window opens, when later than `earliestWeeks`. */
  preferredFromWeeks?: number;
  /** What winter is meant to do to it. */
  fate: 'overwinters' | 'winter-killed';
}

/** Weeks relative to the median last spring freeze (0 °C); negative is before. */
export interface SpringSowing {
  fromWeeks: number;
  toWeeks: number;
  /** True when the seed is broadcast on bare frozen ground and waits for no soil temperature. */
  onFrozenSoil?: boolean;
}
