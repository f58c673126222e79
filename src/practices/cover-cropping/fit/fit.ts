/**
 * How a cover, a mix of covers or a mulch would do in a gap: what the season end is decided by.
 *
 * Everything here is data. A part that is absent is not known or does not apply; it is never guessed.
 */
import type { Span } from '../../../handbook/shapes/row.ts';
import type { Day } from '../../../measures/days.ts';
import type { Reason, Window } from '../../draft.ts';
import type { Origin, StandNitrogen } from '../../stand-nitrogen.ts';
import type { SeedAmount } from '../seed.ts';
import type { SowingHalf } from '../sow-window.ts';

/** What may lie in a gap: a cover or a mix by its handbook id, or mulch. */
export type GapChoice = { choice: 'cover'; coverId: string } | { choice: 'mulch'; mulch: 'leaves' | 'straw' };

/** The word a choice goes by: the id of its cover or mix, or "mulch-leaves" and "mulch-straw". */
export function choiceName(choice: GapChoice): string {
  return choice.choice === 'cover' ? choice.coverId : `mulch-${choice.mulch}`;
}

/** From the best to what a hard rule forbids. */
export type Verdict = 'good' | 'possible' | 'poor' | 'unusable';

/** So many of so many seasons of the record; `among` 0 where nothing was counted. */
export interface Share {
  of: number;
  among: number;
}

/** The gap a fit is for; crops by their names in words. */
export interface FitGap {
  from?: Day;
  to?: Day;
  before?: string;
  next?: string;
}

/** Whether the stand would come up and grow before hard cold. */
export interface Establishment {
  /** Seasons in which the soil lets it sprout and the heat left is enough. */
  share: Share;
  /** Heat it needs before hard cold, °C·days over the base; absent where no figure is known. */
  heatNeeded?: { units: number; baseC: number; origin: Origin };
  /** Heat left from the sowing day to hard cold in the middle season, by the same count. */
  heatLeftUnits?: number;
}

/** What winter would do to it: alive if any part is, dead if all are. */
export interface WinterOdds {
  /** What is reckoned with: what nine winters in ten do, or the zone where winters are not counted. */
  fate: 'lives' | 'unsure' | 'dies';
  /** Whether it is known how cold it gets here, by the record or a zone. */
  coldKnown: boolean;
  lives: Share;
  unsure: Share;
  dies: Share;
  /** Each part by itself, with the temperatures between which it dies. */
  parts: readonly { cover: string; fate: 'lives' | 'unsure' | 'dies'; rangeC?: Span; origin: Origin }[];
}

/** When it would flower, by a figure that is published or made of published ones, or by the calendar. */
export interface BloomFigure {
  /** The last day to cut at the risk that cuts are planned by. */
  close: Day;
  /** How it begins to flower, and the middle day of that. */
  event: string;
  median?: Day;
  /** The middle day of its viable seed, where that and not its flowers is what the cut comes before: then risks are of it. */
  seed?: Day;
  /** The last day to cut at other risks of having flowered, or seeded, percent. */
  byRisk: readonly { percent: number; close: Day }[];
  /** Chance of having flowered, or seeded, by the end of the cut window, 0–1; absent where years and model are not known apart. */
  riskAtCut?: number;
  origin: Origin;
}

/** Or that no figure was published: then buds are looked for every week from a day on, and no odds are given. */
export type FitBloom = PartBloom & {
  /** Of a mix, what is known of each part that may flower, in the order they are heeded. */
  parts?: readonly { cover: string; bloom: PartBloom }[];
};

/** The flowers of one cover, or of the part of a mix that is heeded first. */
export type PartBloom = BloomFigure | { none: 'no published bloom figure'; lookFrom: Day };

/** When it is cut. */
export interface FitCut {
  window: Window;
  /** The day by which it must be cut for what follows, or for bloom where nothing follows. */
  latest: Day;
  decidedBy: 'bloom' | 'next';
  /**
   * What gives way where what follows asks for the cut before its time: growth, with the nitrogen it would still have
   * gathered, or part of the wait.
   */
  givesWay?: { what: 'growth'; days: number; nitrogenGPerM2?: number } | { what: 'the wait'; days: number };
}

/** Whether what follows can go in. */
export interface FitNext {
  met: 'yes' | 'short' | 'no';
  how: 'through residue' | 'residue pulled aside' | 'after the wait';
  /** The day the bed is free for it. */
  freeOn: Day;
  wantedOn?: Day;
}

/** What the gardener must have. */
export interface FitNeeds {
  inoculants: readonly string[];
  /** Seed depth in cm, for each part. */
  depths: readonly { cover: string; cm: Span }[];
  /** Seasons in which the top of the bed is dry on the sowing day and it has to be watered up. */
  dryAtSowing?: Share;
}

/** A mulch for the whole bed. */
export interface FitMulch {
  litres: number;
  depthMm: number;
}

/** One choice for one gap. */
export interface GapFit {
  bedId: string;
  gap: FitGap;
  choice: GapChoice;
  /** In words, for the middle of a sentence. */
  name: string;
  verdict: Verdict;
  /** What the order within a verdict goes by; the weights are in rank.ts. */
  points: number;
  /** Winters between the opening of the gap and the sowing: so many are left to a mulch. */
  wintersBare?: number;
  sow?: Window;
  half?: SowingHalf;
  /** The day the odds are counted for. */
  sowOn?: Day;
  establish?: Establishment;
  winter?: WinterOdds;
  bloom?: FitBloom;
  cut?: FitCut;
  next?: FitNext;
  nitrogen?: StandNitrogen;
  seed: readonly SeedAmount[];
  needs: FitNeeds;
  mulch?: FitMulch;
  /** What speaks for it and against it, as data; the practice's sentences say them. */
  pros: readonly Reason[];
  cons: readonly Reason[];
}
