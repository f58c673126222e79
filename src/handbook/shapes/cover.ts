/**
 * Cover crops: the plants, their mixes, when they flower, what cold does to them and what they yield.
 */
import type { MonthDay } from '../../measures/days.ts';
import type { AutumnSowing, RotationGroup, SpringSowing } from './plant.ts';
import type { Caution, Provenance, Row, SourceId, Span } from './row.ts';

/** Days of the year a cover flowers on whatever the heat, in places of one hardiness zone. */
export interface ZoneBloom {
  /** Whole hardiness zone, 6 for 6a and 6b. */
  zone: number;
  /** Days from the middle of winter (1 January north, 1 July south). */
  daysFromMidwinter: Span;
}

/** Rhizobium group a legume's seed is inoculated with. */
export type Inoculant = 'pea and vetch' | 'red and white clover' | 'crimson and berseem clover' | 'cowpea';

/** Figures of a cover crop whose origin is kept. */
export type CoverField =
  | 'soilMinC'
  | 'springSow'
  | 'autumnSow'
  | 'warmDaysNeeded'
  | 'winterKillC'
  | 'hardinessZoneMin'
  | 'broadcastGPerM2'
  | 'depthCm'
  | 'carbonToNitrogenGreen'
  | 'carbonToNitrogenMature'
  | 'nitrogenKgPerHa'
  | 'waitDays'
  | 'regrows';

/** One cover crop. Temperatures °C, rates g/m² of seed broadcast, depths cm, nitrogen kg/ha in the whole stand. */
export interface CoverCrop extends Row<CoverField> {
  id: string;
  name: string;
  scientificName: string;
  form: 'grass' | 'legume' | 'brassica' | 'broadleaf';
  /** The rotation group it counts as. */
  rotationGroup: RotationGroup;
  soilMinC?: number;
  springSow?: SpringSowing;
  /** True when spring sowing waits for the last freeze to be past (buckwheat, cowpea, sorghum-sudangrass). */
  frostTender: boolean;
  /** Days of warm growth a frost-tender kind needs before the first freeze to be worth sowing. */
  warmDaysNeeded?: number;
  /** Days of warm growth it is better to leave a frost-tender kind, where there is a choice. */
  warmDaysPreferred?: number;
  autumnSow?: AutumnSowing;
  winterKillC?: number;
  hardinessZoneMin?: number;
  broadcastGPerM2: Span;
  /** Rate to use when neither date nor mix says otherwise, g/m². */
  usualGPerM2: number;
  depthCm: Span;
  /** Whether it grows again when cut before bloom. */
  regrows: 'yes' | 'partly' | 'no';
  /** Stage to cut at, in words of our own; may hold marked amounts (measures/quantity). */
  cutStage: string;
  carbonToNitrogenGreen?: number;
  carbonToNitrogenMature?: number;
  nitrogenKgPerHa?: Span;
  /** Days between cutting it green and planting: direct-sown small seed, and transplants. */
  waitDays: { smallSeed: number; transplant: number };
  inoculant?: Inoculant;
  /** What could hurt or go wrong. */
  cautions: readonly Caution[];
}

/** A rate that rises as the sowing slips towards the freeze: weeks before the median first freeze and g/m². */
export interface LateSowingRate {
  coverId: string;
  steps: readonly { weeksBeforeFreeze: number; gPerM2: number }[];
  sources: readonly SourceId[];
}

/** Covers sown together, with each part's broadcast rate in g/m². */
export interface CoverMix extends Row<'parts' | 'springSow'> {
  id: string;
  name: string;
  parts: readonly { coverId: string; gPerM2: number }[];
  /** When the mix is sown in spring, where that is another time than its parts' own. */
  springSow?: SpringSowing;
}

/** When a cover is sown, for the choice of a bloom model. */
export type CoverSituation = 'overwintered' | 'spring-sown' | 'summer-sown';

/** How a day's degree-days are counted from its minimum and maximum (never mix the two). */
export type HeatMethod =
  /** max(0, (tmin + tmax)/2 − base) */
  | 'mean-over-base'
  /** mean of tmin and tmax, each first raised to the base (and cut to the upper limit), less the base */
  | 'raised-to-base'
  /** area of a sine wave from tmin to tmax above the base and below the upper limit (agro:S13) */
  | 'single-sine'
  /** raised-to-base at 0 °C with tmax cut to 21.1 °C while young and to 35 °C from 213 units on (phenology:P2) */
  | 'small-grain'
  /** 1 where (tmin + tmax)/2 reaches the base, else 0: days, not degree-days */
  | 'days-at-base';

/** The recommended bloom model of a cover in one situation: the event its cut must come before. */
export interface BloomModel {
  coverId: string;
  situation: CoverSituation;
  closingEvent: 'anthesis' | 'heading' | 'boot' | 'first flowers' | 'bud';
  /** Days after the closing event in which a cut still comes before viable seed, where a source says so. */
  grace?: { days: number; source: SourceId };
  /** Holds only for stands sown more than so many weeks before the median first freeze; later ones do not flower. */
  sownWeeksBeforeFreeze?: number;
  /** Heat from the middle of winter (1 January north, 1 July south), or from sowing; absent when only days are known. */
  heat?: {
    from: 'midwinter' | 'sowing';
    baseC: number;
    upperC?: number;
    method: HeatMethod;
    sum: { low: number; usual: number; high: number };
    /** Heat from sowing until it is up, where the sum counts from then. */
    up?: { baseC: number; upperC?: number; sum: number };
  };
  /** Degree-days before the closing event at which the heads show, where that is known: the earlier, safer event. */
  headsShowHeatBefore?: Span;
  /** Days from sowing, when no sum of degree-days is known. */
  daysFromSowing?: Span;
  /** Flowering by the calendar, for kinds that go by the length of the day. */
  byZone?: readonly ZoneBloom[];
  /** Standard deviation of the model in days: our judgement of how far sources scatter. */
  modelErrorDays: number;
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** Heat a cover needs from its sowing to the freeze that ends its growth. */
export interface HeatNeed {
  coverId: string;
  count: { baseC: number; method: 'mean-over-base' };
  /** The first freeze of autumn that ends the count, whole °F: the one the published rule speaks of. */
  freezeF: 32 | 28 | 24;
  /** Heat units, °C·days. */
  units: number;
  /** The published last sowing the sum was made of, with the median freeze at its place; absent where a sum is published. */
  turned?: { place: string; station: string; lastSowing: MonthDay; freeze: MonthDay };
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** Nitrogen of a cover's dry tissue, percent, before flowering and in flower. */
export interface NitrogenClass {
  of: 'annual legume' | 'perennial legume' | 'rye' | 'grass or broadleaf';
  green: Span;
  inFlower: Span;
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** Dry matter of a full stand of a cover when it is cut or killed, kg/m². */
export interface CoverYield {
  coverId: string;
  dryKgPerM2: Span;
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** One published (or marked) figure of what cold does to a cover. */
export interface ColdLimit {
  coverId: string;
  /** `mostly alive`: seen to stand this; what kills it lies somewhere below. */
  measure: 'lethal' | 'half killed' | 'mostly alive' | 'injury';
  /** What the figure holds for, where it is not plants hardened by autumn. */
  plants?: 'seedlings' | 'not yet hardened' | 'small and late';
  tempC: Span;
  condition: string;
  provenance: Provenance;
  sources: readonly SourceId[];
}
