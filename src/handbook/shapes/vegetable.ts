/**
 * Vegetables, and the warmth their seed wants.
 */
import type { RotationGroup, SpringSowing } from './plant.ts';
import type { Caution, Row, Span } from './row.ts';

/** Figures of a vegetable whose origin is kept. */
export type VegetableField =
  | 'frostClass'
  | 'firstSowWeeks'
  | 'firstSetOutWeeks'
  | 'autumnSetWeeks'
  | 'lastSowWeeks'
  | 'maturityDays'
  | 'indoorWeeks'
  | 'soilMinC'
  | 'soilPracticalC'
  | 'soilOptimumC'
  | 'soilMaxC'
  | 'nitrogen'
  | 'nitrogenKgPerHa'
  | 'harvestSpanDays'
  | 'rotationYears'
  | 'rotationYearsIfDisease'
  | 'damageTempC'
  | 'spacingIn';

/** One vegetable. Weeks relative to the median last spring freeze are negative before it. */
export interface Vegetable extends Row<VegetableField> {
  id: string;
  name: string;
  scientificName: string;
  family: string;
  rotationGroup: RotationGroup;
  frostClass: 'hardy' | 'half-hardy' | 'tender' | 'very-tender';
  establish: 'direct' | 'transplant' | 'either';
  firstSowWeeks?: SpringSowing;
  /** The first setting out, for kinds both sown and set out that are set out later than they are sown. */
  firstSetOutWeeks?: SpringSowing;
  /**
   * The whole sowing or setting window of a kind that is grown towards autumn or planted in it, in weeks before the
   * median first autumn freeze; `fromWeeks` is the larger, and negative weeks lie after the freeze (garlic).
   */
  autumnSetWeeks?: { fromWeeks: number; toWeeks: number };
  /**
   * Weeks before the median first autumn freeze: the preferred last date, and the hard one after it. Absent: no
   * sowing after the first window.
   */
  lastSowWeeks?: { preferred: number; hard: number };
  /** Weeks before the hard last date from which only early kinds still ripen. */
  earlyKindsOnlyWeeks?: number;
  maturityDays: Span;
  maturityFrom: 'direct' | 'transplant' | 'set' | 'crown' | 'fall-set';
  /** Weeks from indoor sowing to setting out. */
  indoorWeeks?: Span;
  soilMinC?: number;
  soilPracticalC?: number;
  soilOptimumC?: number;
  soilMaxC?: number;
  nitrogen: 'high' | 'medium' | 'low' | 'legume-fixer';
  nitrogenKgPerHa?: number;
  harvestSpanDays: Span;
  rotationYears: number;
  rotationYearsIfDisease?: number;
  /** Air temperature at which growing plants start to be hurt. */
  damageTempC: number;
  /** Spacing in the row and between rows, inches, as the sources print it. */
  spacingIn: string;
  /** Seed small enough that fresh residue must be out of its way. */
  smallSeed: boolean;
  /** True for seed that seedcorn maggot eats in fresh green residue: it waits as small seed does. */
  seedcornMaggot?: boolean;
  /** What could hurt or go wrong. */
  cautions: readonly Caution[];
}

/** Soil temperatures for germination of a crop, °C. */
export interface GerminationTemperature extends Row<'minC' | 'optimumC' | 'maxC'> {
  vegetableIds: readonly string[];
  crop: string;
  minC: number;
  optimumC?: Span;
  maxC?: number;
}
