/**
 * What a practice is: from facts and climate to drafts, in one fixed pass. A practice sees what those before it found
 * and never imports another.
 */
import type { Climate } from '../climate/climate.ts';
import type { Garden } from '../garden/garden.ts';
import type { PracticeName } from '../garden/practice-names.ts';
import type { Day } from '../measures/days.ts';
import type { CompostBalance } from './compost-balance.ts';
import type { Reason, RuleId, TaskDraft, TaskKey } from './draft.ts';

/** All a practice may look at. */
export interface PracticeInput {
  garden: Garden;
  climate: Climate;
  today: Day;
  /** The last day worked out: a year and a little from today. */
  until: Day;
}

/** A cover still to be sown: compost goes on before one that is sown for winter. */
export interface CoverSowing {
  bedId: string;
  standId: string;
  half: 'spring' | 'summer' | 'autumn';
  earliest: Day;
  latest: Day;
}

/** The days a cover holds its bed, sown or planned. */
export interface CoverStanding {
  bedId: string;
  standId: string;
  from: Day;
  /** The last day it is expected to stand; absent while it has no end. */
  ends?: Day;
  /** The task that ends it, where that is still to come: its cut, another, or the lifting of a sheet. */
  endKey?: TaskKey;
}

/** Days in which a bed would lie bare because no cover is sown there. */
export interface Uncovered {
  bedId: string;
  /** The first bare day; absent where nothing was ever grown. */
  from?: Day;
  /** The day the next crop or cover may go in; absent where nothing is planned. */
  to?: Day;
  /** Why no cover is sown, and what lies on either side. */
  why: readonly Reason[];
  /** The mulch the gardener chose for it, where one was chosen. */
  mulch?: 'leaves' | 'straw';
  /** Whether a cover that is over has left its residue on the ground. */
  onResidue: boolean;
  /** The planned stand that no rule lets in, where there is one: the gardener is told in every case. */
  inPlaceOf?: { standId: string; cover: string };
  /** The work that has to be done before the bed is bare. */
  after: readonly TaskKey[];
}

/** A cover that came up thin and is not sown again: its bare ground is mulched. */
export interface ThinStand {
  bedId: string;
  standId: string;
  /** What grows there, in words. */
  cover: string;
  /** The share of the ground that is bare, 0–1. */
  bareShare: number;
  from: Day;
  /** The day the next crop goes in; absent where nothing is planned. */
  to?: Day;
  why: readonly Reason[];
  /** The work that has to be done before it. */
  after: readonly TaskKey[];
}

/** Finished compost on hand, or what will be ready when. */
export interface CompostSupply {
  pileId: string;
  litres: number;
  ready: Day;
  finished: boolean;
}

/** A hot pile somebody might begin. */
export interface NewPile {
  /** The last day to build it so that it can be counted on by a day; nothing where no pile is ready by then. */
  startBy(ready: Day): Day | undefined;
  /** Litres to build of for so many litres of compost, and no less than heats by itself. */
  litresFor(litres: number): number;
}

/** What earlier practices hand to later ones. */
export interface Findings {
  coverSowings: readonly CoverSowing[];
  coverStands: readonly CoverStanding[];
  uncovered: readonly Uncovered[];
  thinStands: readonly ThinStand[];
  compostSupply: readonly CompostSupply[];
  /** What a pile begun anew would take; absent before composting was worked through. */
  newPile?: NewPile;
  /** Compost wanted against compost to come; absent before topdressing was worked through. */
  compostBalance?: CompostBalance;
}

/** What a practice brings back. */
interface PracticeResult {
  drafts: readonly TaskDraft[];
  found?: Partial<Findings>;
}

/** Writes one kind of reason as a sentence; may hold marked amounts and days. */
export type Sentence = (reason: Reason) => string;

/** One practice of the house: its work in one pass, and the words for its reasons. */
export interface Practice {
  name: PracticeName;
  work(input: PracticeInput, found: Findings): PracticeResult;
  /** A sentence for every rule the practice gives as a reason. */
  sentences: Readonly<Record<RuleId, Sentence>>;
}
