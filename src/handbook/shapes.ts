/**
 * Shapes of the handbook's rows: what the trade knows, as tables.
 *
 * Every figure keeps where it comes from. A row lists its sources; `marks` names the fields whose figure is anything
 * other than published in one of those sources. {@link provenanceOf} reads the two together. Absent means not known
 * or not applicable, never zero.
 */

import type { MonthDay } from '../measures/days.ts';

/** Id of a bibliography entry, prefixed by its table: `veg:V12`, `cover:S16`, `phenology:P20`, `compost:S23`, `agro:S53`. */
export type SourceId = `${'veg' | 'cover' | 'phenology' | 'compost' | 'agro' | 'climate'}:${string}`;

/**
 * How a figure is known. `published`: read in a listed source. `secondary`: read where somebody quotes the source.
 * `derived`: our arithmetic on published figures. `common practice`: a fact of the trade. `from memory`: recalled,
 * not read. `house default`: ours, a stop-gap until the gardener's own observation replaces it.
 */
export type Provenance = 'published' | 'secondary' | 'derived' | 'common practice' | 'from memory' | 'house default';

/** One book, page or rule the handbook draws on. */
export interface Source {
  id: SourceId;
  /** Author or publisher, title, year: enough to find it again. */
  citation: string;
  /** How much of it was read when the figure was taken. */
  read: 'whole' | 'part' | 'secondary' | 'not read';
}

/** What every row carries: its sources and the fields that are not plainly published. */
export interface Row<Field extends string> {
  /** Everything the row was written from, the source of its sowing or setting dates first. */
  sources: readonly SourceId[];
  marks: Readonly<Partial<Record<Field, Provenance>>>;
  /** The one of the sources a field's figure is read in, for fields where it is not the first of `sources`. */
  readIn?: Readonly<Partial<Record<Field, SourceId>>>;
}

/** A warning in a sentence of our own, and when it matters; may hold marked amounts (measures/quantity). */
export interface Caution {
  when: 'always' | 'started' | 'over winter' | 'ended';
  text: string;
}

/** A low–high pair; equal ends mean one figure. */
export interface Span {
  low: number;
  high: number;
}

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

/** Figures of a feedstock whose origin is kept. */
export type FeedstockField =
  | 'carbonToNitrogen'
  | 'nitrogenPctDry'
  | 'moisturePctWet'
  | 'densityKgPerM3'
  | 'carbonPctDry';

/** A typical value with the range published for it. */
export interface Typical {
  usual: number;
  low?: number;
  high?: number;
}

/** One compost ingredient. Percentages of dry or wet mass as named; density as piled. */
export interface Feedstock extends Row<FeedstockField> {
  id: string;
  name: string;
  class: 'brown' | 'green' | 'other';
  /** Absent for materials left out of the carbon arithmetic (eggshells, ash). */
  carbonToNitrogen?: Typical;
  nitrogenPctDry?: Typical;
  moisturePctWet?: Typical;
  densityKgPerM3?: Typical;
  /** Carbon of dry matter used in the arithmetic, percent. */
  carbonPctDry?: number;
  manure: boolean;
  /** What could hurt or go wrong, in sentences of our own. */
  cautions: readonly string[];
}

/** Water a soil texture holds (FAO-56 Table 19), m³/m³. */
export interface SoilTexture extends Row<'fieldCapacity' | 'wiltingPoint'> {
  id: string;
  name: string;
  fieldCapacity: Span;
  wiltingPoint: Span;
  /** How it behaves when judged for work: coarse, medium or fine. */
  workClass: 'coarse' | 'medium' | 'fine';
}

/** Half a hardiness zone: mean yearly minimum from `fromF` (included) to `belowF`, °F. */
export interface HardinessZone {
  zone: string;
  fromF: number;
  belowF: number;
}

/** Soil temperatures for germination of a crop, °C. */
export interface GerminationTemperature extends Row<'minC' | 'optimumC' | 'maxC'> {
  vegetableIds: readonly string[];
  crop: string;
  minC: number;
  optimumC?: Span;
  maxC?: number;
}

/** How a field of a row is known. */
export function provenanceOf<Field extends string>(row: Row<Field>, field: Field): Provenance {
  return row.marks[field] ?? 'published';
}

/**
 * What to name as the origin of a field's figure: the source it is read or worked out from, or whose word it is where
 * no source was read. A figure from memory says so, whatever the row lists: nobody has checked it.
 */
export function originOf<Field extends string>(
  row: Row<Field>,
  field: Field,
): SourceId | 'common practice' | 'from memory' | 'house default' {
  const known = provenanceOf(row, field);
  if (known === 'common practice' || known === 'from memory' || known === 'house default') return known;
  return row.readIn?.[field] ?? row.sources[0] ?? 'house default';
}

/** Marks for figures that were recalled and not read. */
export function fromMemory<Field extends string>(...fields: Field[]): Readonly<Record<Field, 'from memory'>> {
  const entries = fields.map((field) => [field, 'from memory'] as const);
  return Object.fromEntries(entries) as Record<Field, 'from memory'>;
}
